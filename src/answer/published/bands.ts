/** Where along one variable a computed value stays between two bounds. */

import { findBracketedRoot } from '../../numerics/bracketedRoot.ts';
import type { PublishedBand } from './model.ts';

/** Null where nothing can be computed. */
export type Sampled = (x: number) => number | null;

interface Point {
  readonly x: number;
  readonly y: number;
}

const EDGE_STEPS = 8;
const TOP_STEPS = 12;
const GOLDEN = (Math.sqrt(5) - 1) / 2;
/** Width to which a bound is found, as a share of the whole range. */
const WIDTH = 1e-6;

/**
 * The parts of the range of `xs` where low ≤ y(x) ≤ high, found between its points: bounds by bracketed roots, the
 * place where the value ceases to exist by halving, and a top or trough that falls short of the band between two
 * points by golden section. A band narrower than that between two points on one side of it may be missed.
 */
export function bandsWithin(
  y: Sampled,
  xs: readonly number[],
  low: number,
  high: number,
): readonly PublishedBand[] {
  const runs = runsOf(y, xs, low, high).map((run) => withTops(y, run, low, high));
  const width = WIDTH * Math.abs(xs.at(-1)! - xs[0]!);
  return joined(
    runs.flatMap((run) => run.slice(1).flatMap((b, i) => segment(y, run[i]!, b, low, high, width))),
  );
}

/** Neighbouring points with a value; each run reaches to where the value ceases to exist, if that can matter. */
function runsOf(y: Sampled, xs: readonly number[], low: number, high: number): readonly (readonly Point[])[] {
  const runs: Point[][] = [];
  let run: Point[] = [];
  const starts: (number | null)[] = [];
  const ends: number[] = [];
  let before: number | null = null;
  for (const x of xs) {
    const value = y(x);
    if (value !== null) {
      if (run.length === 0) {
        runs.push(run);
        starts.push(before);
      }
      run.push({ x, y: value });
    } else if (run.length > 0) {
      ends[runs.length - 1] = x;
      run = [];
    }
    before = x;
  }
  const reach = (at: Point, inner: Point | undefined, beyond: number | null | undefined): readonly Point[] =>
    beyond === null || beyond === undefined || !nears(at, inner, low, high) ? [] : edge(y, at, beyond);
  return runs.map((own, i) => [
    ...reach(own[0]!, own[1], starts[i]),
    ...own,
    ...reach(own.at(-1)!, own.at(-2), ends[i]),
  ]);
}

/** Whether a value is in the band, or on its way there, or nothing is known of its way. */
function nears({ y }: Point, inner: Point | undefined, low: number, high: number): boolean {
  if ((y >= low && y <= high) || inner === undefined) return true;
  return y < low ? y > inner.y : y < inner.y;
}

/** The last point with a value on the way from `inside` to `outside`, where there is none. */
function edge(y: Sampled, inside: Point, outside: number): readonly Point[] {
  let last = inside;
  let beyond = outside;
  for (let step = 0; step < EDGE_STEPS; step++) {
    const x = 0.5 * (last.x + beyond);
    const value = y(x);
    if (value === null) beyond = x;
    else last = { x, y: value };
  }
  return last === inside ? [] : [last];
}

/** A top below the band, or a trough above it, sought between its neighbours: it may reach into the band. */
function withTops(y: Sampled, run: readonly Point[], low: number, high: number): readonly Point[] {
  return run.flatMap((point, i) => {
    const [left, right] = [run[i - 1], run[i + 1]];
    if (left === undefined || right === undefined) return [point];
    const top = point.y < low && point.y >= left.y && point.y >= right.y;
    const trough = point.y > high && point.y <= left.y && point.y <= right.y;
    if (!top && !trough) return [point];
    const found = extreme(y, left, right, top ? 1 : -1);
    if (found === null || found.x === point.x) return [point];
    return found.x < point.x ? [found, point] : [point, found];
  });
}

function extreme(y: Sampled, left: Point, right: Point, sign: 1 | -1): Point | null {
  let [a, b] = [left.x, right.x];
  let best: Point | null = null;
  for (let step = 0; step < TOP_STEPS; step++) {
    const c = b - GOLDEN * (b - a);
    const d = a + GOLDEN * (b - a);
    const [yc, yd] = [y(c), y(d)];
    if (yc === null || yd === null) return best;
    const better = sign * yc > sign * yd ? { x: c, y: yc } : { x: d, y: yd };
    if (best === null || sign * better.y > sign * best.y) best = better;
    if (better.x === c) b = d;
    else a = c;
  }
  return best;
}

/** The part of one stretch, on which the value rises or falls throughout, that lies between the bounds. */
function segment(
  y: Sampled,
  a: Point,
  b: Point,
  low: number,
  high: number,
  width: number,
): readonly PublishedBand[] {
  const cuts = [low, high].flatMap((level) => crossing(y, a, b, level, width));
  const points = [a, ...cuts.sort((p, q) => p.x - q.x), b];
  return points.slice(1).flatMap((to, i) => {
    const from = points[i]!;
    const middle = 0.5 * (from.y + to.y);
    return middle >= low && middle <= high ? [{ low: from.x, high: to.x }] : [];
  });
}

/** Where the value passes a level; the point carries the level itself. */
export function crossing(y: Sampled, a: Point, b: Point, level: number, width: number): readonly Point[] {
  if (a.y > level === b.y > level) return [];
  // A gap inside a stretch would be a hole of the model; the near end stands for it.
  const difference = (x: number): number => (y(x) ?? a.y) - level;
  const { root } = findBracketedRoot(difference, a.x, b.x, { valueTolerance: 0, widthTolerance: width });
  return [{ x: root, y: level }];
}

function joined(bands: readonly PublishedBand[]): readonly PublishedBand[] {
  const all: PublishedBand[] = [];
  for (const band of [...bands].sort((a, b) => a.low - b.low)) {
    const last = all.at(-1);
    if (last !== undefined && band.low <= last.high)
      all[all.length - 1] = { low: last.low, high: Math.max(last.high, band.high) };
    else all.push(band);
  }
  return all;
}

/** What lies in both. */
export function common(a: readonly PublishedBand[], b: readonly PublishedBand[]): readonly PublishedBand[] {
  return a.flatMap((one) =>
    b.flatMap((other) => {
      const low = Math.max(one.low, other.low);
      const high = Math.min(one.high, other.high);
      return low <= high ? [{ low, high }] : [];
    }),
  );
}
