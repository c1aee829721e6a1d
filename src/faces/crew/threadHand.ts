/** What one thread of a crew runs. */

import { parentPort } from 'node:worker_threads';
import type { HandOrder } from '../../answer/asked/farHand.ts';
import { handAtWork } from '../../answer/asked/handAtWork.ts';
import { openDataShelf } from '../disk/data.ts';

const port = parentPort;
if (port === null) throw new Error('a hand of the crew runs in a thread of its own');
const take = handAtWork(openDataShelf(), (answer) => port.postMessage(answer));
port.on('message', (order: HandOrder) => take(order));
