/** Highest point of a function whose every value is waited for, between two points that are lower. */

/** Null where the function has no value: the search stays on the side of the known values. */
export type WaitedFor = (x: number) => Promise<number | null>;

export interface Placed {
  readonly x: number;
  readonly y: number;
}

/** (3 − √5)/2: share of the golden section. */
const GOLDEN = 0.381966011250105;

/**
 * Golden section, with a step to the top of the parabola through the three best points where that step is inside and
 * shorter than half the one before the last. Ends when the bracket is `width` wide, or after `most` values.
 *
 * @param left  a point below `middle` in value, or the end of the range, with its value
 * @param middle the highest point known
 * @param right as `left`, on the other side
 * Source: R. P. Brent, Algorithms for Minimization without Derivatives, Prentice-Hall 1973, ch. 5 (from memory).
 * Check: y = −(x − 0.3)² from 0, 0.5, 1 → 0.3 in four values.
 */
export async function seekPeak(
  f: WaitedFor,
  left: number,
  middle: Placed,
  right: number,
  width: number,
  most = 24,
): Promise<Placed> {
  let [a, b] = [left, right];
  let best = middle;
  let second = middle;
  let third = middle;
  let step = 0;
  let before = 0;
  for (let count = 0; count < most; count++) {
    const centre = 0.5 * (a + b);
    const least = 0.25 * width;
    if (Math.abs(best.x - centre) + 0.5 * (b - a) <= width) break;
    const jump = parabolaStep(best, second, third);
    const inside = jump !== null && best.x + jump > a + least && best.x + jump < b - least;
    if (inside && Math.abs(jump) < 0.5 * Math.abs(before)) {
      before = step;
      step = jump;
    } else {
      before = best.x >= centre ? a - best.x : b - best.x;
      step = GOLDEN * before;
    }
    const x = best.x + (Math.abs(step) >= least ? step : Math.sign(step) * least);
    const y = await f(x);
    if (y !== null && y >= best.y) {
      if (x >= best.x) a = best.x;
      else b = best.x;
      [third, second, best] = [second, best, { x, y }];
    } else {
      if (x < best.x) a = x;
      else b = x;
      if (y === null) continue;
      if (y >= second.y || second.x === best.x) [third, second] = [second, { x, y }];
      else if (y >= third.y || third.x === best.x || third.x === second.x) third = { x, y };
    }
  }
  return best;
}

/** From the best point to the top of the parabola through all three; null where they lie on none that opens downwards. */
function parabolaStep(best: Placed, second: Placed, third: Placed): number | null {
  const r = (best.x - second.x) * (best.y - third.y);
  const q = (best.x - third.x) * (best.y - second.y);
  const under = 2 * (q - r);
  if (under === 0) return null;
  return -((best.x - third.x) * q - (best.x - second.x) * r) / under;
}
