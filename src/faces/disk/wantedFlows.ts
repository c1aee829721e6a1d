/** Whole flows that figures and clips ask for, engine by engine: kept ones as they are, the others computed and kept. */

import { setImmediate } from 'node:timers/promises';
import { CLIMB, type FlowField, type FlowPlace } from '../../answer/flow/index.ts';
import type { SolvedStudy } from '../../answer/solve.ts';
import { ProblemError } from '../../numerics/problem.ts';
import { ambientAt } from '../../telling/figures/conditions.ts';
import type { FlowWanted } from '../../telling/figures/flowsWanted.ts';
import { finestThatHolds } from './finestThatHolds.ts';
import { makeRoom } from './flowRoom.ts';
import { flowFolder } from './flowShelf.ts';
import { type KeptFlowOptions, keptFlows } from './keptFlows.ts';

export interface WantedFlowOptions extends KeptFlowOptions {
  /** Told before each field. */ readonly onField?: (engine: string, done: number, of: number) => void;
  readonly signal?: AbortSignal;
}

/** What cannot be computed at one place of a climb is left out. @throws ProblemError where nothing of an engine can */
export async function wantedFlows(
  { solutions }: Pick<SolvedStudy, 'solutions'>,
  wanted: readonly FlowWanted[],
  options: WantedFlowOptions = {},
): Promise<readonly FlowField[]> {
  await makeRoom(options.folder ?? flowFolder());
  const fields: FlowField[] = [];
  for (const { engine, at } of wanted) {
    const solution = solutions.get(engine);
    if (solution === undefined) continue;
    const { places, which } = placesOf(at);
    const flows = keptFlows(solution, places, options);
    let found = 0;
    let problem: ProblemError | null = null;
    for (const [done, place] of which.entries()) {
      options.signal?.throwIfAborted();
      options.onField?.(solution.input.name, done, which.length);
      await setImmediate();
      try {
        fields.push(await finestThatHolds(flows, place, 'normal'));
        found += 1;
      } catch (error) {
        if (!(error instanceof ProblemError)) throw error;
        problem ??= error;
      }
    }
    if (found === 0 && problem !== null) throw problem;
  }
  return fields;
}

interface Places {
  /** As they are computed, one after the other. */ readonly places: readonly FlowPlace[];
  /** Those of them that are wanted. */ readonly which: readonly number[];
}

/** One place begins from the usual ones of a climb up to it, so that it is the climb's own where it is one of them; of a climb those of the usual ones on the way and one beyond at either end. */
function placesOf(at: FlowWanted['at']): Places {
  if ('place' in at) {
    const { place } = at;
    const before = CLIMB.filter(({ ambientPressure }) => ambientPressure > place.ambientPressure);
    return { places: [...before, place], which: [before.length] };
  }
  const ambients = [ambientAt(at.from), ambientAt(at.to)];
  const [high, low] = [Math.max(...ambients), Math.min(...ambients)];
  const inside = CLIMB.flatMap(({ ambientPressure }, i) =>
    ambientPressure <= high && ambientPressure >= low ? [i] : [],
  );
  const first = inside[0] ?? CLIMB.findIndex(({ ambientPressure }) => ambientPressure <= high);
  const last = inside.at(-1) ?? first - 1;
  const [begin, end] = [Math.max(0, first - 1), Math.min(CLIMB.length - 1, last + 1)];
  return { places: CLIMB, which: Array.from({ length: end - begin + 1 }, (_, k) => begin + k) };
}
