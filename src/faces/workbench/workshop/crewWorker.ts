/** What one worker of the crew runs. */

import type { HandOrder } from '../../../answer/asked/farHand.ts';
import { handAtWork } from '../../../answer/asked/handAtWork.ts';
import { fetchedShelf } from '../shelf.ts';

const take = handAtWork(fetchedShelf(), (answer) => self.postMessage(answer));
self.addEventListener('message', ({ data }: MessageEvent<HandOrder>) => take(data));
