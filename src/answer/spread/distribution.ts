/** How an input is spread, from what the study states. */

import { normalQuantile } from '../../numerics/normalQuantile.ts';
import type { Quantity } from '../../study/model.ts';

export interface Distribution {
  /** [SI] ends of what is drawn */ readonly low: number;
  readonly high: number;
  /** [SI] value below which it lies with this chance, 0 < chance < 1 */ quantile(
    this: void,
    chance: number,
  ): number;
}

/** What a study form allows [SI]. */
export interface Allowed {
  readonly lowest: number | null;
  readonly highest: number | null;
}

/** A ± holds two standard deviations; draws go out to three. */
const DEVIATIONS_STATED = 2;
const DEVIATIONS_DRAWN = 3;

/**
 * ±: normal, the ± being two standard deviations (95 %), cut off at three and at what the study form allows.
 * Range: anywhere alike. With a most likely value: triangular.
 *
 * @returns null where the value is exact
 */
export function distributionOf(
  { value, plusMinus, spread }: Pick<Quantity, 'value' | 'plusMinus' | 'spread'>,
  { lowest, highest }: Allowed,
): Distribution | null {
  if (spread?.kind === 'even') {
    const { low, high } = spread;
    return { low, high, quantile: (chance) => low + chance * (high - low) };
  }
  if (spread?.kind === 'triangular') return triangular(spread.low, spread.high, spread.peak);
  if (plusMinus === null || plusMinus === 0) return null;
  const deviation = plusMinus / DEVIATIONS_STATED;
  const low = Math.max(value - DEVIATIONS_DRAWN * deviation, lowest ?? -Infinity);
  const high = Math.min(value + DEVIATIONS_DRAWN * deviation, highest ?? Infinity);
  const from = chanceBelow((low - value) / deviation);
  const to = chanceBelow((high - value) / deviation);
  return {
    low,
    high,
    quantile: (chance) => value + deviation * normalQuantile(from + chance * (to - from)),
  };
}

function triangular(low: number, high: number, peak: number): Distribution {
  const rising = (peak - low) / (high - low);
  return {
    low,
    high,
    quantile: (chance) =>
      chance < rising
        ? low + Math.sqrt(chance * (high - low) * (peak - low))
        : high - Math.sqrt((1 - chance) * (high - low) * (high - peak)),
  };
}

/** The inverse of the quantile, by halving: needed twice an input. */
function chanceBelow(deviations: number): number {
  let low = 0;
  let high = 1;
  for (let halving = 0; halving < 60; halving++) {
    const middle = 0.5 * (low + high);
    if (middle === 0 || middle === 1) break;
    if (normalQuantile(middle) < deviations) low = middle;
    else high = middle;
  }
  return 0.5 * (low + high);
}

/** A standard normal number cut off at three deviations, from a chance: the draw of a model's error. */
export function modelError(chance: number): number {
  return cutNormal.quantile(chance);
}
const cutNormal = distributionOf(
  { value: 0, plusMinus: DEVIATIONS_STATED },
  { lowest: null, highest: null },
)!;

/** How errors of a model move numbers, in a list of places: at two deviations to an end of the band, each side by itself. */
export interface Pulls {
  /** Share of the way to that end [–] */ readonly share: Float64Array;
  /** Where its value stands in the values of the low ends, behind them those of the high ends. */
  readonly end: Uint32Array;
}

/**
 * @param deviations of the error, one a place
 * @param which of the values the place goes by @param values how many there are of each end
 */
export function pullsOf(deviations: Float64Array, which: (place: number) => number, values: number): Pulls {
  const share = new Float64Array(deviations.length);
  const end = new Uint32Array(deviations.length);
  for (let place = 0; place < share.length; place++) {
    const deviation = deviations[place]!;
    share[place] = Math.abs(deviation) / DEVIATIONS_STATED;
    end[place] = which(place) + (deviation >= 0 ? values : 0);
  }
  return { share, end };
}

/** Adds what an error moves each number by. @param ends how far the ends lie off, the low ones first */
export function pullInto(into: Float64Array, { share, end }: Pulls, ends: Float64Array): void {
  for (let place = 0; place < into.length; place++) {
    into[place] = into[place]! + share[place]! * ends[end[place]!]!;
  }
}
