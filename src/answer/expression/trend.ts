/** What is said of an expression over a range: it rises, falls, is constant, is highest somewhere. */

import { absentIn, type Built, readerOf, sizeOf, told, type Work } from './built.ts';
import type { BuiltTest, Findings } from './builtTest.ts';
import { sideNamed, toleranceAt, toleranceOf } from './compare.ts';
import type { AskedValues, ComparisonOperator, Witness } from './model.ts';
import { around, type Spread } from './spreadRange.ts';
import type { Test } from './tree.ts';
import { refuse } from './trouble.ts';

type TrendNode = Extract<Test, { is: 'trend' }>;

/** Steps smaller than this share of the size are no steps: what is left of rounding and iterations. */
const FLAT = 1e-6;
/** Unless said otherwise, constant allows this share to either side of the middle. */
const CONSTANT = 0.01;

interface Pair {
  readonly margin: number;
  /** Indices of the two points that decide. */ readonly from: number;
  readonly to: number;
}

/** Everything a trend needs of its points at once; NaN where one is absent. */
interface Read {
  readonly y: Float64Array;
  /** Of the largest of them; 1 where there is none. */ readonly size: number;
}

/** Reads all points, always into the same list. */
function pointsReader(bodies: readonly Built[]): (values: AskedValues) => Read {
  const y = new Float64Array(bodies.length);
  const readers = bodies.map(readerOf);
  return (values) => {
    let size = 0;
    for (let i = 0; i < y.length; i++) {
      y[i] = readers[i]!(values);
      size = Math.max(size, sizeOf(bodies[i]!, values, y[i]!));
    }
    return { y, size: size > 0 ? size : 1 };
  };
}

/** `rises`: no step down, and the end above the beginning. `does not rise`: no step up. */
function monotone(trend: Exclude<TrendNode['trend'], 'constant'>, y: Float64Array, size: number): Pair {
  const up = trend === 'rises' || trend === 'does not fall' ? 1 : -1;
  let [worst, to] = [Number.POSITIVE_INFINITY, 1];
  for (let i = 1; i < y.length; i++) {
    const margin = (up * (y[i]! - y[i - 1]!)) / size + FLAT;
    // Written so that an absent value stays one.
    if (!(margin >= worst)) [worst, to] = [margin, i];
    if (Number.isNaN(margin)) break;
  }
  const step: Pair = { margin: worst, from: to - 1, to };
  if (trend === 'does not fall' || trend === 'does not rise' || Number.isNaN(worst)) return step;
  const last = y.length - 1;
  const whole = (up * (y[last]! - y[0]!)) / size - FLAT;
  return whole < worst ? { margin: whole, from: 0, to: last } : step;
}

function constancy(y: Float64Array, size: number, allowed: (middle: number) => number): Pair {
  let [low, high] = [0, 0];
  y.forEach((value, i) => {
    if (value < y[low]!) low = i;
    if (value > y[high]!) high = i;
  });
  const middle = (y[low]! + y[high]!) / 2;
  const margin = (allowed(middle) - (y[high]! - y[low]!) / 2) / size;
  return { margin: y.some(Number.isNaN) ? Number.NaN : margin, from: low, to: high };
}

const SHOWN: Readonly<Record<TrendNode['trend'], ComparisonOperator>> = {
  rises: '<',
  falls: '>',
  'does not rise': '>=',
  'does not fall': '<=',
  constant: 'about',
};

export function trendTest(
  node: TrendNode,
  bodies: readonly Built[],
  spread: Spread,
  tolerance: Built | null,
  text: string,
): BuiltTest {
  const allowed = allowance(node, tolerance, bodies[0]!);
  const read = pointsReader(bodies);
  const pairOf = (values: AskedValues): Pair => {
    const { y, size } = read(values);
    return node.trend === 'constant'
      ? constancy(y, size, (middle) => allowed(middle))
      : monotone(node.trend, y, size);
  };
  return ofMargin(
    (values) => pairOf(values).margin,
    bodies,
    text,
    (values, { sides, witnesses }) => {
      const { margin, from, to } = pairOf(values);
      if (Number.isNaN(margin)) return;
      sides.push({
        names: { left: sideNamed(bodies[from]!, text), right: sideNamed(bodies[to]!, text) },
        text: text.slice(node.start, node.end),
        left: told(bodies[from]!.value(values)),
        right: told(bodies[to]!.value(values)),
        operator: SHOWN[node.trend],
        tolerance: null,
        dimension: bodies[0]!.dimension,
        margin,
      });
      const is = margin >= 0 ? 'closest call' : 'counterexample';
      const { points, range } = spread;
      const stretch = is === 'counterexample' ? stretchOf(node.trend, read(values), from, to, spread) : {};
      witnesses.push({ range, variable: node.range.variable, place: points[to]!, is, ...stretch });
    },
  );
}

/** All steps without a gap around the worst one that go the wrong way. */
function stretchOf(
  trend: TrendNode['trend'],
  { y, size }: Read,
  from: number,
  to: number,
  { points }: Spread,
): Pick<Witness, 'around'> {
  if (trend === 'constant' || to !== from + 1) return {};
  const up = trend === 'rises' || trend === 'does not fall' ? 1 : -1;
  const wrong = (i: number): boolean => i > 0 && (up * (y[i]! - y[i - 1]!)) / size + FLAT < 0;
  let first = to;
  while (wrong(first - 1)) first -= 1;
  return { around: { from: points[first - 1]!, to: around(points, to, (i) => i > to && wrong(i)).to } };
}

/** How far from its middle a constant may stray. */
function allowance(node: TrendNode, tolerance: Built | null, body: Built): (middle: number) => number {
  if (tolerance === null || node.tolerance === null) return (middle) => CONSTANT * Math.abs(middle);
  if (tolerance.constant === null) {
    refuse(
      node.tolerance,
      'tolerance-not-fixed',
      'The tolerance is itself computed.',
      'Write e.g. within 1 %.',
    );
  }
  const { tolerance: written } = node;
  // At the door, so that a tolerance of another kind is refused before anything runs.
  const share = toleranceAt(toleranceOf(written, tolerance, body));
  return (middle) => share([], middle);
}

/** A test by the sign of its margin alone. */
export function ofMargin(
  margin: Work,
  bodies: readonly Built[],
  text: string,
  explain: (values: AskedValues, into: Findings) => void,
): BuiltTest {
  return {
    margin,
    holds: (values) => {
      const m = margin(values);
      return Number.isNaN(m) ? null : m >= 0;
    },
    absent: (values) => {
      for (const body of bodies) {
        const absent = absentIn(body, values, text);
        if (absent !== null) return absent;
      }
      return null;
    },
    explain,
  };
}
