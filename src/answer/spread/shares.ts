/** What the draws say about a test: the share in which it holds, the span of a number, what matters most. */

import { type EffectsDesign, effectsDesign, effectsOver } from '../../numerics/effects.ts';
import { remembered } from '../../numerics/remembered.ts';
import { designPlaces } from './designPlaces.ts';
import type { Drawn, DrawnAsk, Unknown } from './model.ts';

export interface Share {
  /** Of the draws in which it is decided [–]; null where none is. */ readonly share: number | null;
  /** Standard error of that share, from the blocks [–] */ readonly error: number;
  /** Share of the draws in which a value is absent [–] */ readonly undecided: number;
}

type Values = (number | null)[];

/** Calls `use` with the values of the asks in every draw; the array is filled again each time. */
export function eachDraw(
  asks: readonly DrawnAsk[],
  count: number,
  use: (values: Values, draw: number) => void,
): void {
  // Filled with numbers, not with nulls: an array of plain numbers costs no memory for each.
  const values: Values = asks.map(() => Number.NaN);
  for (let draw = 0; draw < count; draw++) {
    for (let i = 0; i < asks.length; i++) {
      const { absent, values: own } = asks[i]!;
      // Two ways of storing, so that a list of plain numbers stays one.
      if (absent !== null && absent[draw] === 1) values[i] = null;
      else values[i] = own[draw]!;
    }
    use(values, draw);
  }
}

/** @param holds of the values of `asks`, in their order; null where it cannot be decided */
export function shareOf(
  drawn: Pick<Drawn, 'count' | 'blocks'>,
  asks: readonly DrawnAsk[],
  holds: (values: Values) => boolean | null,
): Share {
  const { count, blocks } = drawn;
  const yes = new Float64Array(blocks);
  const decided = new Float64Array(blocks);
  eachDraw(asks, count, (values, draw) => {
    const verdict = holds(values);
    const block = Math.floor((draw * blocks) / count);
    if (verdict === null) return;
    decided[block]! += 1;
    if (verdict) yes[block]! += 1;
  });
  const all = decided.reduce((sum, n) => sum + n, 0);
  if (all === 0) return { share: null, error: 0, undecided: 1 };
  const share = yes.reduce((sum, n) => sum + n, 0) / all;
  let squares = 0;
  let used = 0;
  for (let block = 0; block < blocks; block++) {
    if (decided[block] === 0) continue;
    squares += (yes[block]! / decided[block]! - share) ** 2;
    used += 1;
  }
  return {
    share,
    error: used > 1 ? Math.sqrt(squares / (used * (used - 1))) : 0,
    undecided: 1 - all / count,
  };
}

/** Quantiles of a number over the draws; null where it has no value in any. */
export function spanOf(
  drawn: Pick<Drawn, 'count'>,
  asks: readonly DrawnAsk[],
  number: (values: Values) => number | null,
  chances: readonly number[] = [0.025, 0.975],
): readonly number[] | null {
  const found: number[] = [];
  eachDraw(asks, drawn.count, (values) => {
    const value = number(values);
    if (value !== null) found.push(value);
  });
  if (found.length === 0) return null;
  found.sort((a, b) => a - b);
  return chances.map((chance) => {
    const place = chance * (found.length - 1);
    const below = Math.floor(place);
    const above = Math.min(below + 1, found.length - 1);
    return found[below]! + (place - below) * (found[above]! - found[below]!);
  });
}

export interface Matter {
  readonly unknown: Unknown;
  /** Total effect [–] */ readonly share: number;
  readonly error: number;
}

/** Asks at the points at which total effects are reckoned, each worked out when it is first wanted. */
interface AtDesign {
  readonly design: EffectsDesign;
  /** Of an ask, by its place in the list; NaN where there is none. */ valuesOf(
    this: void,
    ask: number,
  ): Float64Array;
}

/** Kept as long as the draws are: every number of the same draws is asked at the same points. */
const atDesignOf = new WeakMap<Drawn, AtDesign>();

const designFor = remembered((unknowns: number, seed: number) =>
  effectsDesign(unknowns, { count: 128, scramblings: 2, seed }),
);

function atDesign(drawn: Drawn): AtDesign {
  const known = atDesignOf.get(drawn);
  if (known !== undefined) return known;
  const design = designFor(drawn.unknowns.length, drawn.seed);
  const valuesAt = drawn.over(designPlaces(design, drawn));
  const values: (Float64Array | undefined)[] = [];
  const found: AtDesign = {
    design,
    valuesOf(ask) {
      const own = values[ask] ?? valuesAt(ask);
      values[ask] = own;
      return own;
    },
  };
  atDesignOf.set(drawn, found);
  return found;
}

/**
 * What the spread of a number hangs on, most first; nothing where it does not spread, or has no value somewhere.
 *
 * @param which asks it is made of, by their places @param number of their values, in that order
 */
export function mattersMost(
  drawn: Drawn,
  which: readonly number[],
  number: (values: Values) => number | null,
): readonly Matter[] {
  const { unknowns } = drawn;
  if (unknowns.length === 0) return [];
  const { design, valuesOf } = atDesign(drawn);
  const values = which.map(valuesOf);
  const own: Values = which.map(() => Number.NaN);
  const never = which.map((ask) => drawn.asks[ask]!.absent?.every((one) => one === 1) ?? false);
  let absent = false;
  const effects = effectsOver(
    design,
    (point) => {
      for (let i = 0; i < which.length; i++) {
        const one = values[i]![point]!;
        if (Number.isNaN(one)) {
          own[i] = null;
          if (!never[i]!) absent = true;
        } else own[i] = one;
      }
      const value = number(own);
      if (value === null) absent = true;
      return value ?? 0;
    },
    drawn.hangsOn(which),
  );
  if (absent || effects.variance === 0) return [];
  // Total effects add up to one at least; what they fall short by is the error of their estimate.
  const sum = effects.total.reduce((all, share) => all + share, 0);
  const scale = sum < 1 ? 1 / sum : 1;
  return unknowns
    .map((unknown, i) => ({ unknown, share: scale * effects.total[i]!, error: effects.totalError[i]! }))
    .sort((a, b) => b.share - a.share);
}
