/** The whole flow of a place on the finest mesh on which it holds: where a finer field breaks the last coarser one stands, and where the coarsest does what it was last. */

import { type Fineness, FlowBroke, type FlowField, levelsTo } from '../../answer/flow/index.ts';
import { type Problem, ProblemError } from '../../numerics/problem.ts';
import type { KeptFlows } from './keptFlows.ts';

/** A finer mesh or field that does not hold; anything else, such as a thread that was lost, is told as it is. */
const BROKE: readonly string[] = ['field-broke', 'field-no-step', 'mesh-folded'];

/**
 * @param onBroke told why it is not as fine as asked for
 * @throws ProblemError where there is no field of the engine at all, or something else went wrong
 */
export async function finestThatHolds(
  flows: Pick<KeptFlows, 'at'>,
  place: number,
  fineness: Fineness,
  onBroke: (problem: Problem) => void = () => undefined,
): Promise<FlowField> {
  let held: FlowField | null = null;
  for (const level of levelsTo(fineness)) {
    try {
      held = await flows.at(place, level);
    } catch (error) {
      if (held === null && error instanceof FlowBroke) return error.last;
      if (!(error instanceof ProblemError) || held === null || !BROKE.includes(error.problem.code))
        throw error;
      onBroke(error.problem);
      break;
    }
  }
  return held!;
}
