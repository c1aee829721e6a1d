/** A study text solved for the page that opens it: engines first, for they are what is looked at, then what they lift. */

import { altitudeCurve } from '../../answer/conditions.ts';
import type { DataShelf } from '../../answer/shelf.ts';
import { type SolvedEngines, solveStudyLive } from '../../answer/solve.ts';
import { knownNames } from '../../study/names.ts';
import { readStudy } from '../../study/read.ts';
import { packedRows } from './packedRows.ts';
import { writtenSolved } from './solvedBlock.ts';
import { type Flights, type Ladder, ladderStep, ladderTop } from './solvedStudy.ts';

/** What comes one after the other: the study with its engines as a block of bytes, then its vehicles where they were not known by then. */
export interface FirstPieces {
  engines(block: Uint8Array<ArrayBuffer>): void;
  flights(flights: Flights): void;
}

/**
 * @param pause waited for between pieces of the work
 * @returns all of it as one block, to be kept; null where the text is no study, which the page itself then says
 */
export async function solveFirst(
  text: string,
  shelf: DataShelf,
  tell: FirstPieces,
  pause?: () => Promise<void>,
): Promise<(() => Uint8Array<ArrayBuffer>) | null> {
  const outcome = readStudy(text, { file: 'study.yaml', ...knownNames(await shelf.propellants()) });
  if (!outcome.ok) return null;
  const { study, warnings } = outcome;
  let ladders: Record<string, Ladder> = {};
  const tellEngines = ({ answer, solutions }: SolvedEngines, vehicles: Flights | null): void => {
    ladders = laddersOf(solutions);
    tell.engines(writtenSolved({ study, warnings, answer, vehicles, ladders }));
  };
  let areTold = false;
  const { answer, ...live } = await solveStudyLive(study, shelf, {
    ...(pause && { pause }),
    onEngines(engines) {
      areTold = true;
      tellEngines(engines, null);
    },
  });
  const { vehicles, ...engines } = answer;
  if (areTold) tell.flights(vehicles);
  else tellEngines({ answer: engines, ...live }, vehicles);
  return () => writtenSolved({ study, warnings, answer: engines, vehicles, ladders });
}

function laddersOf(solutions: SolvedEngines['solutions']): Record<string, Ladder> {
  const ladders: Record<string, Ladder> = {};
  for (const [id, solution] of solutions) {
    const rows = altitudeCurve(solution, ladderTop / ladderStep + 1);
    const vacuum = rows.at(-1);
    if (vacuum !== undefined) ladders[id] = { ...packedRows(rows.slice(0, -1)), vacuum };
  }
  return ladders;
}
