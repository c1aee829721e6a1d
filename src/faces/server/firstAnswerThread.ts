/** What the thread of the first answer runs: study texts in, solved studies out. */

import { parentPort } from 'node:worker_threads';
import { altitudeCurve } from '../../answer/conditions.ts';
import type { DataShelf } from '../../answer/shelf.ts';
import { solveStudyLive } from '../../answer/solve.ts';
import { knownNames } from '../../study/names.ts';
import { readStudy } from '../../study/read.ts';
import { openDataShelf } from '../disk/data.ts';
import { packedRows } from '../solved/packedRows.ts';
import { writtenSolved } from '../solved/solvedBlock.ts';
import { type Ladder, ladderStep, ladderTop } from '../solved/solvedStudy.ts';

/** The solved study of a text as the page reads it; null where the text is no study, which the page itself then says. */
export async function firstAnswerOf(text: string, shelf: DataShelf): Promise<Uint8Array<ArrayBuffer> | null> {
  const start = performance.now();
  const outcome = readStudy(text, { file: 'study.yaml', ...knownNames(await shelf.propellants()) });
  if (!outcome.ok) return null;
  const { answer, solutions } = await solveStudyLive(outcome.study, shelf);
  const ladders: Record<string, Ladder> = {};
  for (const [id, solution] of solutions) {
    const rows = altitudeCurve(solution, ladderTop / ladderStep + 1);
    const vacuum = rows.at(-1);
    if (vacuum !== undefined) ladders[id] = { ...packedRows(rows.slice(0, -1)), vacuum };
  }
  const took = performance.now() - start;
  return writtenSolved({ study: outcome.study, warnings: outcome.warnings, answer, ladders, took });
}

if (parentPort !== null) {
  const port = parentPort;
  const shelf = openDataShelf();
  port.on('message', (text: string) => {
    firstAnswerOf(text, shelf).then(
      (answer) => port.postMessage(answer),
      // Whatever is wrong with the study, the page comes upon it as well and says it there.
      () => port.postMessage(null),
    );
  });
}
