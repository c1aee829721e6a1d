/** What one thread of the picture makers runs. */

import { parentPort } from 'node:worker_threads';
import type { PictureDone, PictureOrder } from './pictureMakers.ts';
import { pngOf } from './pngPicture.ts';

const port = parentPort;
if (port === null) throw new Error('a maker of pictures runs in a thread of its own');
port.on('message', ({ order, svg, width, words }: PictureOrder) => {
  const answer = (done: PictureDone): void => port.postMessage(done);
  try {
    answer({ order, png: pngOf(svg, width, words) });
  } catch (error) {
    answer({ order, fault: String(error) });
  }
});
