/** The whole flow of an engine through time: from the disk where every moment of it is kept, else computed and kept. */

import { type FlowField, type FlowPlace, type TimedChoices, timedFields } from '../../answer/flow/index.ts';
import type { EngineSolution } from '../../answer/solution.ts';
import { flowFolder, flowKey, keepFlow, readFlow } from './flowShelf.ts';
import { engineKey, type KeptFlowOptions } from './keptFlows.ts';

/** Changes with the steps that moments are found by: those kept before are not told beside new ones. */
const MOMENTS = 'moments 2';

/**
 * Moment after moment. A run that was cut off begins anew: how it goes on hangs on more than a picture of it holds.
 * @throws ProblemError see timedFields
 */
export async function* keptMoments(
  solution: EngineSolution,
  place: FlowPlace,
  choices: TimedChoices,
  { fresh = false, folder = flowFolder() }: Omit<KeptFlowOptions, 'bits'> = {},
): AsyncGenerator<FlowField> {
  const { team: _team, ...asked } = choices;
  const run = flowKey([engineKey(solution, choices.bits), MOMENTS, place, asked]);
  const keyOf = (moment: number): string => flowKey([run, moment]);
  const kept = fresh ? null : await allKept(folder, keyOf, choices.frames + 1);
  if (kept !== null) return yield* kept;
  let moment = 0;
  for (const field of timedFields(solution, place, choices)) {
    await keepFlow(folder, keyOf(moment), field);
    moment += 1;
    yield field;
  }
}

/** Null where one is missing. */
async function allKept(
  folder: string,
  keyOf: (moment: number) => string,
  count: number,
): Promise<readonly FlowField[] | null> {
  const fields: FlowField[] = [];
  for (let moment = 0; moment < count; moment++) {
    const field = await readFlow(folder, keyOf(moment));
    if (field === null) return null;
    fields.push(field);
    if (field.moment?.ended !== undefined) break;
  }
  return fields;
}
