/** What one worker of the crew runs. */

import type { HandOrder } from '../../../answer/asked/farHand.ts';
import { handAtWork } from '../../../answer/asked/handAtWork.ts';
import { fetchedShelf } from '../shelf.ts';
import { nextTask } from './nextTask.ts';

const take = handAtWork({
  shelf: fetchedShelf(),
  post: (answer) => self.postMessage(answer),
  letHear: nextTask,
});
self.addEventListener('message', ({ data }: MessageEvent<HandOrder>) => take(data));
