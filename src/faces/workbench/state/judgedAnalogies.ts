/** Which verdicts of analogies still hold for the study on screen. */

import type { CheckedAnalogy } from '../../../answer/analogies/model.ts';
import type { AnalogyInput } from '../../../study/model.ts';

export interface JudgedAnalogy {
  readonly checked: CheckedAnalogy;
  /** What it was judged from. */ readonly input: AnalogyInput;
}

/** Each verdict with the analogy it is about. */
export function besideInputs(
  checked: readonly CheckedAnalogy[],
  inputs: readonly AnalogyInput[],
): readonly JudgedAnalogy[] {
  return checked.flatMap((one) => {
    const input = inputs.find(({ id }) => id === one.id);
    return input === undefined ? [] : [{ checked: one, input }];
  });
}

/** By id, those whose words and tests are still these. */
export function stillJudged(
  judged: readonly JudgedAnalogy[],
  inputs: readonly AnalogyInput[],
): ReadonlyMap<string, CheckedAnalogy> {
  const now = new Map(inputs.map((input) => [input.id, JSON.stringify(input)]));
  return new Map(
    judged
      .filter(({ input }) => now.get(input.id) === JSON.stringify(input))
      .map(({ checked }) => [checked.id, checked]),
  );
}
