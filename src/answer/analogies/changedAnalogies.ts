/** Which verdicts of analogies an edit changed. */

import { type ChangedVerdict, changedVerdicts } from '../sentences/changedVerdicts.ts';
import type { CheckedAnalogy } from './model.ts';

/** As little of a checked analogy as a comparison needs. */
export type JudgedAnalogy = Pick<CheckedAnalogy, 'id' | 'say' | 'verdict'> &
  Partial<Pick<CheckedAnalogy, 'problem'>>;

/** In the order of `after`, those that are gone last. */
export function changedAnalogies(
  before: readonly JudgedAnalogy[],
  after: readonly JudgedAnalogy[],
): readonly ChangedVerdict[] {
  const plain = ({ id, say, verdict, problem = null }: JudgedAnalogy) => ({
    id,
    say,
    verdict,
    share: null,
    problem,
  });
  return changedVerdicts(before.map(plain), after.map(plain)).map((change) => ({
    ...change,
    words: `analogy ${change.words}`,
  }));
}
