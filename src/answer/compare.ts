/** Two engines set against each other: what is held equal, what differs, by how much, and the short answer. */

import { crossingsOf, leadOverAltitude } from './compare/crossings.ts';
import { comparedQuantities } from './compare/quantities.ts';
import { shortAnswerOf } from './compare/shortAnswer.ts';
import { sharedTraits } from './compare/traits.ts';
import type { Comparison } from './model.ts';
import type { EngineSolution } from './solution.ts';

/**
 * `base` is the one that "more" and "less" refer to.
 * @param asked altitudes of interest besides the standard ones [m, geometric]
 */
export function compareEngines(
  base: EngineSolution,
  other: EngineSolution,
  asked: readonly number[] = [],
): Comparison {
  const crossings = crossingsOf(base, other, leadOverAltitude(base, other));
  return {
    base: base.input.id,
    other: other.input.id,
    ...sharedTraits(base, other),
    quantities: comparedQuantities(base, other, asked),
    crossings,
    answer: shortAnswerOf(base, other, crossings),
  };
}
