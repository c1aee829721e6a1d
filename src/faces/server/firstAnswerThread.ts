/** What the thread of the first answer runs: study texts in, the pieces of solved studies out. */

import { parentPort } from 'node:worker_threads';
import { openDataShelf } from '../disk/data.ts';
import { type KeptAnswers, keptAnswers } from '../disk/keptAnswers.ts';
import { programStamp } from '../disk/programStamp.ts';
import type { FirstPiece } from './firstAnswer.ts';

/** Null where its own files cannot be listed: then nothing is kept. */
function keptByThisProgram(): KeptAnswers | null {
  try {
    return keptAnswers(programStamp());
  } catch {
    return null;
  }
}

const port = parentPort;
if (port !== null) {
  const shelf = openDataShelf();
  let kept: KeptAnswers | null | undefined;
  const tell = (piece: FirstPiece, blocks: readonly ArrayBuffer[] = []) => port.postMessage(piece, blocks);

  const answer = async (text: string): Promise<void> => {
    if (kept === undefined) kept = keptByThisProgram();
    const known = (await kept?.read(text)) ?? null;
    if (known !== null) return tell({ piece: known }, [known.buffer]);
    // The solver is loaded where it is needed.
    const { solveFirst } = await import('../solved/solveFirst.ts');
    const whole = await solveFirst(text, shelf, {
      piece: (block) => tell({ piece: block }, [block.buffer]),
      flights: (flights) => tell({ flights }),
    });
    if (whole !== null) await kept?.keep(text, whole());
  };

  port.on('message', (text: string) => {
    void answer(text)
      // Whatever is wrong with the study, the page comes upon it as well and says it there; one that cannot be kept is solved again.
      .catch(() => undefined)
      .then(() => tell('end'));
  });
}
