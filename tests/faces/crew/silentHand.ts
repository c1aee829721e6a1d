/** A hand of a flow team that ends without a word when it is given work. */

import { parentPort } from 'node:worker_threads';

parentPort?.on('message', () => process.exit());
