/**
 * Root of a continuous function between two points of opposite sign.
 *
 * Method: regula falsi with the Illinois weight and a bisection whenever a step fails to halve the
 * bracket in two tries; the bracket is kept throughout, so a jump through zero converges to the jump.
 * Source of the weight: M. Dowell, P. Jarratt, "A modified regula falsi method for computing the root of
 * an equation", BIT 11 (1971) 168–174.
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
  options: BracketedRootOptions,
): BracketedRoot {
  const maxSteps = options.maxSteps ?? 100;
  let a = from;
  let b = to;
  let fa = checked(f(a), a);
  if (Math.abs(fa) <= options.valueTolerance) return { root: a, value: fa, converged: true, steps: 1 };
  let fb = checked(f(b), b);
  if (Math.abs(fb) <= options.valueTolerance) return { root: b, value: fb, converged: true, steps: 2 };
  if (fa > 0 === fb > 0) throw new RangeError(`no sign change between ${a} and ${b}`);
  let sideKept = 0;
  let slowSteps = 0;
  let x = a;
  let fx = fa;
  // the weighted end values; the true ones stay in fa and fb
  let wa = fa;
  let wb = fb;
  for (let step = 3; step <= maxSteps; step++) {
    const width = b - a;
    const first = step === 3 && options.start !== undefined && (options.start - a) * (options.start - b) < 0;
    x = first ? options.start! : slowSteps >= 3 ? a + width / 2 : a - (wa * width) / (wb - wa);
    if (!((x - a) * (x - b) < 0)) x = a + width / 2;
    fx = checked(f(x), x);
    if (Math.abs(fx) <= options.valueTolerance) return { root: x, value: fx, converged: true, steps: step };
    if (fx > 0 === fb > 0) {
      b = x;
      fb = fx;
      wb = fx;
      if (sideKept === -1) wa /= 2;
      else wa = fa;
      sideKept = -1;
    } else {
      a = x;
      fa = fx;
      wa = fx;
      if (sideKept === 1) wb /= 2;
      else wb = fb;
      sideKept = 1;
    }
    if (Math.abs(b - a) <= options.widthTolerance) {
      const nearer = Math.abs(fa) < Math.abs(fb);
      return { root: nearer ? a : b, value: nearer ? fa : fb, converged: true, steps: step };
    }
    slowSteps = Math.abs(b - a) > 0.5 * Math.abs(width) ? (slowSteps >= 3 ? 0 : slowSteps + 1) : 0;
  }
  return { root: x, value: fx, converged: false, steps: maxSteps };
}

function checked(value: number, at: number): number {
  if (!Number.isFinite(value)) throw new RangeError(`the function has no finite value at ${at}`);
  return value;
}
