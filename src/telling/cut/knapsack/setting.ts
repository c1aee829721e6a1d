/** What stays the same while beginnings are looked at. */

import type { Closures } from './closures.ts';
import type { Completions } from './completions.ts';
import { groupValue, type Prices, type Relaxed } from './relaxation.ts';

export interface Setting {
  readonly relaxed: Relaxed;
  readonly closures: Closures;
  readonly prices: Prices;
  /** Group of each item. */ readonly groupOf: readonly number[];
  /** Σ V of the groups from each one on. */ readonly later: Float64Array;
  /** Change of the bound where an open item of a later group is forced, barred. */
  readonly ifForced: Float64Array;
  readonly ifBarred: Float64Array;
  /** Null where they are not needed, or too many. */ readonly completions: Completions | null;
  /** Of each item: needs and is needed by nobody. */ readonly isAlone: readonly boolean[];
}

export type Readied = Pick<Setting, 'relaxed' | 'closures' | 'groupOf' | 'isAlone'>;

export function settingOf(readied: Readied, prices: Prices, completions: Completions | null): Setting {
  const { relaxed, groupOf } = readied;
  const { starts, bonuses } = relaxed;
  const { reduced } = prices;
  const later = new Float64Array(bonuses.length + 1);
  const values = bonuses.map((bonus, g) => groupValue(reduced, starts[g]!, starts[g + 1]!, bonus));
  for (let g = bonuses.length - 1; g >= 0; g--) later[g] = later[g + 1]! + values[g]!;
  // A forced item brings its group's bonus; the bound may have counted it as not taken.
  const ifForced = Float64Array.from(reduced, (value, i) => {
    const g = groupOf[i]!;
    return value > 0 ? 0 : Math.min(0, bonuses[g]! + value - Math.min(values[g]!, bonuses[g]!));
  });
  const ifBarred = Float64Array.from(reduced, (value) => (value > 0 ? -value : 0));
  return { ...readied, prices, later, ifForced, ifBarred, completions };
}
