/**
 * Root of a continuous function between two points of opposite sign.
 *
 * Method: inverse quadratic interpolation where the three points at hand allow it, else bisection; the bracket is kept
 * throughout, so a jump through zero converges to the jump.
 * Source: T. R. Chandrupatla, "A new hybrid quadratic/bisection algorithm for finding the zero of a nonlinear function
 * without using derivatives", Advances in Engineering Software 28 (1997) 145–149 (from memory).
 */
export interface BracketedRoot {
  readonly root: number;
  /** Value of the function at `root`. */
  readonly value: number;
  readonly converged: boolean;
  readonly steps: number;
}

export interface BracketedRootOptions {
  /** Stop when |f| falls to this. */
  readonly valueTolerance: number;
  /** Stop when the bracket is narrower than this (same unit as the argument). */
  readonly widthTolerance: number;
  readonly maxSteps?: number;
  /** First point to try, when one is known. */
  readonly start?: number;
}

/** @throws RangeError when the ends do not bracket a root or a value is not finite (a fault of the caller). */
export function findBracketedRoot(
  f: (x: number) => number,
  from: number,
  to: number,
  { valueTolerance, widthTolerance, maxSteps = 100, start }: BracketedRootOptions,
): BracketedRoot {
  // a: the newest point; b: the other end of the bracket; c: the point before.
  let b = from;
  let fb = checked(f(b), b);
  if (Math.abs(fb) <= valueTolerance) return { root: b, value: fb, converged: true, steps: 1 };
  let a = to;
  let fa = checked(f(a), a);
  if (Math.abs(fa) <= valueTolerance) return { root: a, value: fa, converged: true, steps: 2 };
  if (fa > 0 === fb > 0) throw new RangeError(`no sign change between ${from} and ${to}`);
  const inside = start !== undefined && (start - a) * (start - b) < 0;
  let share = inside ? (start - a) / (b - a) : fa / (fa - fb);
  for (let steps = 3; steps <= maxSteps; steps++) {
    let x = steps === 3 && inside ? start : a + share * (b - a);
    if (!((x - a) * (x - b) < 0)) x = a + 0.5 * (b - a);
    const fx = checked(f(x), x);
    if (Math.abs(fx) <= valueTolerance) return { root: x, value: fx, converged: true, steps };
    let c = a;
    let fc = fa;
    if (fx > 0 !== fa > 0) {
      c = b;
      fc = fb;
      b = a;
      fb = fa;
    }
    a = x;
    fa = fx;
    if (Math.abs(b - a) <= widthTolerance || a + 0.5 * (b - a) === a || a + 0.5 * (b - a) === b) {
      const nearer = Math.abs(fa) < Math.abs(fb);
      return { root: nearer ? a : b, value: nearer ? fa : fb, converged: true, steps };
    }
    share = nextShare(a, fa, b, fb, c, fc, widthTolerance);
  }
  return { root: a, value: fa, converged: false, steps: maxSteps };
}

/** Where between a and b to go next, as a share of the way: inverse quadratic where monotone, else the middle. */
function nextShare(
  a: number,
  fa: number,
  b: number,
  fb: number,
  c: number,
  fc: number,
  width: number,
): number {
  const xi = (a - b) / (c - b);
  const phi = (fa - fb) / (fc - fb);
  if (!(phi * phi < xi && (1 - phi) * (1 - phi) < 1 - xi)) return 0.5;
  const share =
    (fa / (fb - fa)) * (fc / (fb - fc)) + (((c - a) / (b - a)) * (fa / (fc - fa)) * fb) / (fc - fb);
  const least = Math.min(0.5, (0.5 * width) / Math.abs(b - a));
  return Math.min(Math.max(share, least), 1 - least);
}

function checked(value: number, at: number): number {
  if (!Number.isFinite(value)) throw new RangeError(`the function has no finite value at ${at}`);
  return value;
}
