/**
 * Shares of the variance of a function of independent uniform numbers that hang on each of them.
 *
 *   total effect   S_Ti = E[(f(A) − f(A with column i of B))²] / (2 V)                  (M. J. W. Jansen 1999)
 *   first order    S_i = E[f(B) (f(A with column i of B) − f(A))] / V                   (A. Saltelli et al. 2010)
 *
 * Source: A. Saltelli, P. Annoni, I. Azzini, F. Campolongo, M. Ratto, S. Tarantola, "Variance based sensitivity analysis of
 * model output", Comput. Phys. Commun. 181 (2010) 259–270, table 2 (from memory; tested on functions whose indices are known).
 */

import { randomStream } from './randomStream.ts';
import { MOST_SOBOL_DIMENSIONS, sobolPoints } from './sobol.ts';

export interface Effects {
  readonly mean: number;
  readonly variance: number;
  /** Share that stays open while all others are known [–]; 0 where nothing varies. */ readonly total: readonly number[];
  /** Share that would go if this one became known [–]. */ readonly first: readonly number[];
  /** Standard error of each total effect, from the scramblings [–]. */ readonly totalError: readonly number[];
}

/** Points at which a function is needed, the same for every function of so many numbers. */
export interface EffectsDesign {
  readonly dimensions: number;
  /** Points a set. */ readonly count: number;
  readonly scramblings: number;
  /** Of each scrambling in turn: both sets, then the first one with each coordinate in turn taken from the second. */
  readonly points: readonly Float64Array[];
}

/** @param count points a scrambling, a power of two; count × (dimensions + 2) points are needed for each */
export function effectsDesign(
  dimensions: number,
  { count = 512, scramblings = 8, seed = 1 }: { count?: number; scramblings?: number; seed?: number } = {},
): EffectsDesign {
  const points = Array.from({ length: scramblings }, (_, i) => pointsOfRun(dimensions, count, seed + i));
  return { dimensions, count, scramblings, points: points.flat() };
}

/** @param f of `dimensions` numbers between 0 and 1 */
export function effectsOf(
  f: (u: Float64Array) => number,
  dimensions: number,
  options: { count?: number; scramblings?: number; seed?: number } = {},
): Effects {
  const design = effectsDesign(dimensions, options);
  return effectsOver(design, (point) => f(design.points[point]!));
}

/**
 * @param at the function at one of the points of the design, by its number
 * @param hangsOn whether the function moves with a coordinate at all; one with which it does not is not asked for
 */
export function effectsOver(
  { dimensions, count, scramblings }: EffectsDesign,
  at: (point: number) => number,
  hangsOn: (dimension: number) => boolean = () => true,
): Effects {
  const runs = Array.from({ length: scramblings }, (_, i) =>
    oneRun((point) => at(i * count * (dimensions + 2) + point), dimensions, count, hangsOn),
  );
  const over = (of: (run: Run) => number): number =>
    runs.reduce((sum, run) => sum + of(run), 0) / scramblings;
  const mean = over((run) => run.mean);
  const variance = Math.max(0, over((run) => run.square) - mean * mean);
  const nothing = !(variance > 1e-24 * Math.max(mean * mean, Number.MIN_VALUE));
  const shares = (of: (run: Run) => readonly number[]): readonly number[] =>
    Array.from({ length: dimensions }, (_, i) => (nothing ? 0 : over((run) => of(run)[i]!) / variance));
  const total = shares((run) => run.total);
  return {
    mean,
    variance,
    total,
    first: shares((run) => run.first),
    totalError: total.map((share, i) => {
      if (nothing) return 0;
      const spread = over((run) => (run.total[i]! / variance - share) ** 2);
      return Math.sqrt(spread / Math.max(1, scramblings - 1));
    }),
  };
}

interface Run {
  readonly mean: number;
  readonly square: number;
  readonly total: readonly number[];
  readonly first: readonly number[];
}

type Coordinate = (point: number, dimension: number) => number;

/**
 * Two sets of points that know nothing of each other: halves of the coordinates of one sequence; where there are more than it
 * has, a second scrambling in shuffled order (R. A. Fisher, F. Yates).
 */
function pairOf(dimensions: number, count: number, seed: number): readonly [Coordinate, Coordinate] {
  if (2 * dimensions <= MOST_SOBOL_DIMENSIONS) {
    const points = sobolPoints(count, 2 * dimensions, seed);
    return [(point, i) => points.at(point, i), (point, i) => points.at(point, dimensions + i)];
  }
  const one = sobolPoints(count, dimensions, seed);
  const other = sobolPoints(count, dimensions, ~seed);
  const chance = randomStream(seed);
  const order = Array.from({ length: count }, (_, i) => i);
  for (let i = count - 1; i > 0; i--) {
    const j = Math.floor((i + 1) * chance());
    [order[i], order[j]] = [order[j]!, order[i]!];
  }
  return [(point, i) => one.at(point, i), (point, i) => other.at(order[point]!, i)];
}

function pointsOfRun(dimensions: number, count: number, seed: number): readonly Float64Array[] {
  const [one, other] = pairOf(dimensions, count, seed);
  const rowsOf = (coordinate: Coordinate): readonly Float64Array[] =>
    Array.from({ length: count }, (_, point) =>
      Float64Array.from({ length: dimensions }, (__, i) => coordinate(point, i)),
    );
  const [rows, otherRows] = [rowsOf(one), rowsOf(other)];
  const mixed = Array.from({ length: dimensions * count }, (_, place) => {
    const [i, n] = [Math.floor(place / count), place % count];
    const u = Float64Array.from(rows[n]!);
    u[i] = otherRows[n]![i]!;
    return u;
  });
  return [...rows, ...otherRows, ...mixed];
}

function oneRun(
  at: (point: number) => number,
  dimensions: number,
  count: number,
  hangsOn: (dimension: number) => boolean,
): Run {
  const [a, b] = [new Float64Array(count), new Float64Array(count)];
  for (let n = 0; n < count; n++) [a[n], b[n]] = [at(n), at(count + n)];
  let sum = 0;
  let squares = 0;
  for (let n = 0; n < count; n++) {
    sum += a[n]! + b[n]!;
    squares += a[n]! ** 2 + b[n]! ** 2;
  }
  const mean = sum / (2 * count);
  const total: number[] = [];
  const first: number[] = [];
  for (let i = 0; i < dimensions; i++) {
    let jansen = 0;
    let saltelli = 0;
    if (hangsOn(i)) {
      for (let n = 0; n < count; n++) {
        const mixed = at((i + 2) * count + n);
        jansen += (a[n]! - mixed) ** 2;
        saltelli += (b[n]! - mean) * (mixed - a[n]!);
      }
    }
    total.push(jansen / (2 * count));
    first.push(saltelli / count);
  }
  return { mean, square: squares / (2 * count), total, first };
}
