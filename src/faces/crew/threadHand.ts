/** What one thread of a crew runs. */

import { setImmediate as letHear } from 'node:timers/promises';
import { parentPort } from 'node:worker_threads';
import type { HandOrder } from '../../answer/asked/farHand.ts';
import { handAtWork } from '../../answer/asked/handAtWork.ts';
import { openDataShelf } from '../disk/data.ts';

const port = parentPort;
if (port === null) throw new Error('a hand of the crew runs in a thread of its own');
const take = handAtWork({
  shelf: openDataShelf(),
  post: (answer) => port.postMessage(answer),
  letHear: () => letHear(),
});
port.on('message', (order: HandOrder) => take(order));
