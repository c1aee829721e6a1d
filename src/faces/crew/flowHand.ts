/** What one thread of a flow team runs: its share of one field after the other. */

import { parentPort } from 'node:worker_threads';
import { type HandWork, workAsHand } from '../../physics/euler/index.ts';

parentPort?.on('message', (work: HandWork) => workAsHand(work));
