/** What the thread of the first answer runs: study texts in, the pieces of solved studies out. */

import { parentPort } from 'node:worker_threads';
import { openDataShelf } from '../disk/data.ts';
import { solveFirst } from '../solved/solveFirst.ts';
import type { FirstPiece } from './firstAnswer.ts';

const port = parentPort;
if (port !== null) {
  const shelf = openDataShelf();
  const tell = (piece: FirstPiece, blocks: readonly ArrayBuffer[] = []) => port.postMessage(piece, blocks);
  port.on('message', (text: string) => {
    void solveFirst(text, shelf, {
      engines: (block) => tell({ engines: block }, [block.buffer]),
      flights: (flights) => tell({ flights }),
    })
      // Whatever is wrong with the study, the page comes upon it as well and says it there.
      .catch(() => false)
      .then(() => tell('end'));
  });
}
