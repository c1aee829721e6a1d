/**
 * Ordinary differential equations y′ = f(t, y) by an embedded pair of orders 5 and 4 with its continuous extension.
 *
 * Source: J. R. Dormand, P. J. Prince, "A family of embedded Runge–Kutta formulae", J. Comput. Appl. Math. 6 (1980) 19–26
 * (the coefficients, from memory; the order conditions that they must satisfy are tested). Step control and continuous
 * extension of order 4: E. Hairer, S. P. Nørsett, G. Wanner, Solving Ordinary Differential Equations I, 2nd ed. 1993,
 * II.4 and II.6 (from memory, tested).
 */

/** Writes y′ at (t, y) into `slope`. */
export type Slope = (t: number, y: Float64Array, slope: Float64Array) => void;

export interface Step {
  readonly from: number;
  readonly to: number;
  /** State at the end of the step; the same array for every step, overwritten by the next. */
  readonly end: Float64Array;
  /** State anywhere in the step, written into `into`. */ at(t: number, into: Float64Array): void;
}

export interface IntegrateOptions {
  /** Error allowed a step: |error| ≤ absolute + relative |y|, component by component. */
  readonly relative: number;
  readonly absolute: readonly number[] | Float64Array;
  readonly firstStep: number;
  readonly longestStep?: number;
  /** More steps than this are a fault of the problem. */ readonly mostSteps?: number;
}

/** Nodes, stages and weights of the pair. */
export const DORMAND_PRINCE = {
  nodes: [0, 1 / 5, 3 / 10, 4 / 5, 8 / 9, 1, 1],
  stages: [
    [],
    [1 / 5],
    [3 / 40, 9 / 40],
    [44 / 45, -56 / 15, 32 / 9],
    [19372 / 6561, -25360 / 2187, 64448 / 6561, -212 / 729],
    [9017 / 3168, -355 / 33, 46732 / 5247, 49 / 176, -5103 / 18656],
    [35 / 384, 0, 500 / 1113, 125 / 192, -2187 / 6784, 11 / 84],
  ],
  /** Fifth order less fourth order. */
  error: [71 / 57600, 0, -71 / 16695, 71 / 1920, -17253 / 339200, 22 / 525, -1 / 40],
  /** Of the continuous extension. */
  dense: [
    -12715105075 / 11282082432,
    0,
    87487479700 / 32700410799,
    -10690763975 / 1880347072,
    701980252875 / 199316789632,
    -1453857185 / 822651844,
    69997945 / 29380423,
  ],
} as const;

const SAFETY = 0.9;
const MOST_GROWTH = 5;
const MOST_SHRINKING = 0.2;
/** Share of the last error in the next step, which keeps the steps from swinging. */
const MEMORY = 0.04;

/**
 * Integrates from `from` to `to`, which may lie before it, and hands every step to `onStep`; where that returns true, it ends there.
 *
 * @returns the state at the end
 * @throws RangeError where the slope is not finite at the start, or the steps become too many or too short
 */
export function integrate(
  slope: Slope,
  from: number,
  start: ArrayLike<number>,
  to: number,
  { relative, absolute, firstStep, longestStep = Infinity, mostSteps = 100_000 }: IntegrateOptions,
  onStep: (step: Step) => boolean | undefined = () => undefined,
): { readonly t: number; readonly y: Float64Array; readonly steps: number } {
  const size = start.length;
  const { dense } = DORMAND_PRINCE;
  const k = Array.from({ length: 7 }, () => new Float64Array(size));
  const y = Float64Array.from(start);
  const next = new Float64Array(size);
  const pair = pairOf(slope, k, y, next);
  const direction = to < from ? -1 : 1;
  let t = from;
  let h = direction * Math.min(Math.abs(firstStep), longestStep, Math.abs(to - from));
  let lastError = 1e-4;
  let refused = false;
  let steps = 0;
  slope(t, y, k[0]!);
  requireFinite(k[0]!, t);

  const interpolate = (tFrom: number, width: number) => (at: number, into: Float64Array) => {
    const s = (at - tFrom) / width;
    const rest = 1 - s;
    for (let i = 0; i < size; i++) {
      const difference = next[i]! - y[i]!;
      const bump = width * k[0]![i]! - difference;
      const tail = difference - width * k[6]![i]! - bump;
      let extra = 0;
      for (let j = 0; j < 7; j++) extra += dense[j]! * k[j]![i]!;
      into[i] = y[i]! + s * (difference + rest * (bump + s * (tail + rest * width * extra)));
    }
  };

  while (direction * (to - t) > 0) {
    if (steps >= mostSteps)
      throw new RangeError(`more than ${mostSteps} steps before t = ${to}, now at ${t}`);
    if (direction * (t + h - to) > 0 || direction * (t + 1.01 * h - to) > 0) h = to - t;
    pair.stages(t, h);
    let sumOfSquares = 0;
    for (let i = 0; i < size; i++) {
      const e = pair.error(i);
      const a = y[i]! < 0 ? -y[i]! : y[i]!;
      const b = next[i]! < 0 ? -next[i]! : next[i]!;
      const scaled = (h * e) / (absolute[i]! + relative * (a > b ? a : b));
      sumOfSquares += scaled * scaled;
    }
    const size1 = Math.sqrt(sumOfSquares / size);
    if (size1 <= 1) {
      steps += 1;
      const wanted = SAFETY * Math.max(size1, 1e-10) ** (0.75 * MEMORY - 0.2) * lastError ** MEMORY;
      const growth = Math.min(refused ? 1 : MOST_GROWTH, Math.max(MOST_SHRINKING, wanted));
      const end = t + h;
      const done = onStep({ from: t, to: end, end: next, at: interpolate(t, h) }) === true;
      t = end;
      y.set(next);
      k[0]!.set(k[6]!);
      lastError = Math.max(size1, 1e-4);
      refused = false;
      if (done) break;
      h = direction * Math.min(Math.abs(h) * growth, longestStep);
    } else {
      // A value that is not finite counts as an error too large.
      h *= Number.isFinite(size1) ? Math.max(MOST_SHRINKING, SAFETY * size1 ** -0.2) : MOST_SHRINKING;
      refused = true;
      if (t + h === t) throw new RangeError(`the step at t = ${t} became too short`);
    }
  }
  return { t, y, steps };
}

const [, , [a20, a21], [a30, a31, a32], [a40, a41, a42, a43], [a50, a51, a52, a53, a54], sixth] =
  DORMAND_PRINCE.stages;
const [a10] = DORMAND_PRINCE.stages[1];
const [a60, , a62, a63, a64, a65] = sixth;
const [, c1, c2, c3, c4] = DORMAND_PRINCE.nodes;
const [e0, , e2, e3, e4, e5, e6] = DORMAND_PRINCE.error;

interface Pair {
  /** The slopes from the second on, and the state at the end of a step. */ stages(
    t: number,
    h: number,
  ): void;
  /** Fifth order less fourth order of a component, over the step. */ error(component: number): number;
}

/** Written out: sums over weights in a loop cost half as much again. */
function pairOf(
  slope: Slope,
  [k0, k1, k2, k3, k4, k5, k6]: readonly Float64Array[],
  y: Float64Array,
  next: Float64Array,
): Pair {
  const size = y.length;
  const [p, q, r, s, u, v, w] = [k0!, k1!, k2!, k3!, k4!, k5!, k6!];
  const trial = new Float64Array(size);
  const stages = (t: number, h: number): void => {
    for (let i = 0; i < size; i++) trial[i] = y[i]! + h * (a10 * p[i]!);
    slope(t + c1 * h, trial, q);
    for (let i = 0; i < size; i++) trial[i] = y[i]! + h * (a20 * p[i]! + a21 * q[i]!);
    slope(t + c2 * h, trial, r);
    for (let i = 0; i < size; i++) trial[i] = y[i]! + h * (a30 * p[i]! + a31 * q[i]! + a32 * r[i]!);
    slope(t + c3 * h, trial, s);
    for (let i = 0; i < size; i++)
      trial[i] = y[i]! + h * (a40 * p[i]! + a41 * q[i]! + a42 * r[i]! + a43 * s[i]!);
    slope(t + c4 * h, trial, u);
    for (let i = 0; i < size; i++)
      trial[i] = y[i]! + h * (a50 * p[i]! + a51 * q[i]! + a52 * r[i]! + a53 * s[i]! + a54 * u[i]!);
    slope(t + h, trial, v);
    for (let i = 0; i < size; i++)
      next[i] = y[i]! + h * (a60 * p[i]! + a62 * r[i]! + a63 * s[i]! + a64 * u[i]! + a65 * v[i]!);
    slope(t + h, next, w);
  };
  const error = (i: number): number =>
    e0 * p[i]! + e2 * r[i]! + e3 * s[i]! + e4 * u[i]! + e5 * v[i]! + e6 * w[i]!;
  return { stages, error };
}

function requireFinite(slope: Float64Array, t: number): void {
  if (!slope.every(Number.isFinite)) throw new RangeError(`the slope is not finite at t = ${t}`);
}
