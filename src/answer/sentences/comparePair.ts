/** The study's comparison at its two ends, each difference with its own band. */

import type { Study } from '../../study/model.ts';
import type { Crew } from '../asked/crew.ts';
import type { DrawOptions } from '../spread/index.ts';
import { type ComparedPair, type DifferenceBand, differenceBands } from './differenceBand.ts';

export interface CheckedComparison extends ComparedPair {
  /** Specific impulse at the pad and in vacuum, other less base; one is missing where an engine has no number. */
  readonly differences: readonly DifferenceBand[];
}

/** The pair that the study names, else its first two engines; null where there are none. */
export async function comparePair(
  { compare, ...study }: Study,
  crew: Crew,
  options: DrawOptions = {},
): Promise<CheckedComparison | null> {
  const [first, second] = study.engines;
  const base = compare?.base ?? first?.id;
  const other = compare?.other ?? second?.id;
  if (base === undefined || other === undefined) return null;
  const pair = { base, other };
  const found = await differenceBands(
    { compare, ...study },
    crew,
    pair,
    [
      { quantity: 'specificImpulse', ambient: { kind: 'altitude', altitude: 0 } },
      { quantity: 'specificImpulse', ambient: { kind: 'vacuum' } },
    ],
    options,
  );
  return { ...pair, differences: found.filter((one) => one !== null) };
}
