/** Highest and lowest value of a curve, placed by further solves, and how the curve runs. */

import { seekPeak } from '../../numerics/seekPeak.ts';
import type { Course, Extreme } from './model.ts';
import { isConstant, type Sample, spanOf, valueIn } from './samples.ts';

/** An optimum is placed to this share of the range. */
const PLACED_TO = 2e-4;

/** An extreme and the share of the range at which it lies. */
export type PlacedExtreme = Extreme & { readonly share: number };

/**
 * @param sign 1: the highest; −1: the lowest
 * @param at the curve's value at a share of the range, worked out; null where there is nothing between the samples
 */
export async function extremeOf(
  samples: readonly Sample[],
  curve: number,
  sign: 1 | -1,
  at: ((share: number) => Promise<number | null>) | null,
  xAt: (share: number) => number,
): Promise<PlacedExtreme | null> {
  const best = bestIndex(samples, curve, sign);
  if (best === null) return null;
  const sample = samples[best]!;
  const found = { share: sample.share, x: sample.x, y: valueIn(sample, curve)! };
  const [before, after] = [samples[best - 1], samples[best + 1]];
  if (before === undefined || after === undefined) return { ...found, at: 'end' };
  if (valueIn(before, curve) === null || valueIn(after, curve) === null) return { ...found, at: 'hole' };
  if (at === null || isConstant(spanOf(samples, curve)!)) return { ...found, at: 'inside' };
  const signed = async (share: number): Promise<number | null> => {
    const y = await at(share);
    return y === null ? null : sign * y;
  };
  const middle = { x: sample.share, y: sign * found.y };
  const peak = await seekPeak(signed, before.share, middle, after.share, PLACED_TO);
  return { share: peak.x, x: xAt(peak.x), y: sign * peak.y, at: 'inside' };
}

function bestIndex(samples: readonly Sample[], curve: number, sign: 1 | -1): number | null {
  let best = null as number | null;
  samples.forEach((sample, i) => {
    const y = valueIn(sample, curve);
    if (y !== null && (best === null || sign * y > sign * valueIn(samples[best]!, curve)!)) best = i;
  });
  return best;
}

/** Smaller turns, as a share of the span, are not told. */
const TURN = 2e-3;

/** How a curve runs, holes left out. */
export function courseOf(samples: readonly Sample[], curve: number): Course {
  const span = spanOf(samples, curve);
  if (span === null) return 'has no value';
  if (isConstant(span)) return 'stays the same';
  const values = samples.flatMap((sample) => valueIn(sample, curve) ?? []);
  const ways = turnsOf(values, TURN * (span.high - span.low));
  if (ways.length === 1) return ways[0] === 1 ? 'rises' : 'falls';
  if (ways.length === 2) return ways[0] === 1 ? 'has its highest inside' : 'has its lowest inside';
  return 'turns more than once';
}

/** The ways up (1) and down (−1) that a row of values takes, turns smaller than `least` left out. */
function turnsOf(values: readonly number[], least: number): readonly (1 | -1)[] {
  const ways: (1 | -1)[] = [];
  let [low, high] = [values[0]!, values[0]!];
  for (const value of values) {
    const way = ways.at(-1);
    low = way === 1 ? low : Math.min(low, value);
    high = way === -1 ? high : Math.max(high, value);
    if (way !== 1 && value > low + least) {
      ways.push(1);
      high = value;
    } else if (way !== -1 && value < high - least) {
      ways.push(-1);
      low = value;
    }
  }
  return ways;
}
