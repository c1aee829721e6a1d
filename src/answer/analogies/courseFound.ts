/** Whether a followed curve goes as a leg says: direction, constancy, or the power of the input. */

import type { Course } from '../../study/model.ts';
import type { LegVerdict, Steepness } from './model.ts';

export interface CurvePlace {
  readonly x: number;
  readonly y: number;
}

export interface CourseFound {
  readonly verdict: Extract<LegVerdict, 'right' | 'partly right' | 'wrong' | 'can’t tell'>;
  readonly words: string;
  readonly steepness: Steepness | null;
}

/** Steps back that are smaller than this share of the whole span are the last digits of an iteration. */
const NOISE = 0.005;
/** A curve that spans less than this share of its size goes nowhere. */
const FLAT = 1e-6;
/** Fewer places do not show a course. */
export const FEWEST_PLACES = 5;

/** @param places in the order of x */
export function courseFound(places: readonly CurvePlace[], goes: Course): CourseFound {
  if (places.length < FEWEST_PLACES) {
    return { verdict: 'can’t tell', words: `Only ${places.length} values were found.`, steepness: null };
  }
  const steepness = steepnessOf(places);
  if (goes.is === 'unchanged') return { ...constancy(places, goes.within), steepness };
  if (goes.is === 'power') return power(steepness, goes.exponent, goes.tolerance);
  return { ...direction(places, goes.is === 'up' ? 1 : -1), steepness };
}

interface Span {
  readonly low: number;
  readonly high: number;
}

const spanOf = (places: readonly CurvePlace[]): Span => {
  const values = places.map(({ y }) => y);
  return { low: Math.min(...values), high: Math.max(...values) };
};

const isFlat = ({ low, high }: Span): boolean => high - low <= FLAT * Math.max(Math.abs(low), Math.abs(high));

function constancy(places: readonly CurvePlace[], within: number): Omit<CourseFound, 'steepness'> {
  const span = spanOf(places);
  if (isFlat(span)) return { verdict: 'right', words: 'It stays the same.' };
  const middle = Math.abs(0.5 * (span.low + span.high));
  const half = 0.5 * (span.high - span.low);
  if (middle === 0) return { verdict: 'wrong', words: 'It changes its sign.' };
  const share = half / middle;
  const words = `It moves by ± ${percent(share)} round its middle`;
  return share <= within
    ? { verdict: 'right', words: `${words}, within ${percent(within)}.` }
    : { verdict: 'wrong', words: `${words}, more than ${percent(within)}.` };
}

/** @param sign 1: it should go up */
function direction(places: readonly CurvePlace[], sign: 1 | -1): Omit<CourseFound, 'steepness'> {
  const span = spanOf(places);
  if (isFlat(span)) return { verdict: 'wrong', words: 'It stays the same.' };
  const noise = NOISE * (span.high - span.low);
  const { gained, lost } = waysOf(places, sign, noise);
  const [towards, away] = sign === 1 ? ['up', 'down'] : ['down', 'up'];
  if (lost === 0) return { verdict: 'right', words: `It goes ${towards} all the way.` };
  if (gained === 0) return { verdict: 'wrong', words: `It goes ${away} all the way.` };
  const share = gained / (gained + lost);
  return {
    verdict: 'partly right',
    words: `It goes ${towards} in a part of the range only, and ${away} in the rest (${percent(share)} of its way is ${towards}).`,
  };
}

/** How far a curve goes each way, turns smaller than the noise left out. */
function waysOf(
  places: readonly CurvePlace[],
  sign: 1 | -1,
  noise: number,
): { gained: number; lost: number } {
  let [gained, lost] = [0, 0];
  let from = places[0]!.y * sign;
  for (const { y } of places) {
    const step = y * sign - from;
    if (Math.abs(step) <= noise) continue;
    if (step > 0) gained += step;
    else lost -= step;
    from = y * sign;
  }
  return { gained, lost };
}

function power(steepness: Steepness | null, exponent: number, tolerance: number): CourseFound {
  if (steepness === null) {
    const words =
      'A power of the input needs an input above nothing, and a value that does not change its sign.';
    return { verdict: 'can’t tell', words, steepness };
  }
  const fits = (found: number): boolean => Math.abs(found - exponent) <= tolerance;
  const { whole, low, high } = steepness;
  const halves = fits(low) && fits(high);
  const [a, b, c] = [whole, low, high].map(exponentText);
  const words = `It goes like the power ${a} on the whole: ${b} in the lower half, ${c} in the upper. Claimed is ${exponentText(exponent)} ± ${exponentText(tolerance)}.`;
  const verdict = fits(whole) ? (halves ? 'right' : 'partly right') : 'wrong';
  return { verdict, words, steepness };
}

const exponentText = (value: number): string => String(Number(value.toFixed(2))).replace('-', '−');

/**
 * The exponent n of y ∝ xⁿ by least squares: n = Σ(u−ū)(v−v̄) / Σ(u−ū)², u = ln x, v = ln |y|. Null where a logarithm
 * does not exist.
 */
export function steepnessOf(places: readonly CurvePlace[]): Steepness | null {
  const sign = Math.sign(places[0]?.y ?? 0);
  if (sign === 0 || places.some(({ x, y }) => !(x > 0) || Math.sign(y) !== sign)) return null;
  const logs = places.map(({ x, y }) => ({ u: Math.log(x), v: Math.log(Math.abs(y)) }));
  const middle = 0.5 * (logs[0]!.u + logs.at(-1)!.u);
  const [whole, low, high] = [
    slope(logs),
    slope(logs.filter(({ u }) => u <= middle)),
    slope(logs.filter(({ u }) => u >= middle)),
  ];
  return whole === null ? null : { whole, low: low ?? whole, high: high ?? whole };
}

function slope(logs: readonly { readonly u: number; readonly v: number }[]): number | null {
  const mean = (of: (one: { u: number; v: number }) => number): number =>
    logs.reduce((sum, one) => sum + of(one), 0) / logs.length;
  const [u, v] = [mean((one) => one.u), mean((one) => one.v)];
  const spread = mean((one) => (one.u - u) ** 2);
  return logs.length < 2 || spread === 0 ? null : mean((one) => (one.u - u) * (one.v - v)) / spread;
}

const percent = (share: number): string => `${Number((share * 100).toPrecision(2))} %`;
