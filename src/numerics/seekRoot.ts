/** Zero of a function whose every value is waited for, between two points of opposite sign. */

import type { Placed, WaitedFor } from './seekPeak.ts';

export interface SoughtRoot extends Placed {
  /** The sign changes without the value going to zero: a jump, or a pole. */ readonly jump: boolean;
}

/** A value that is still this share of the first ones when the bracket is closed belongs to a jump. */
const JUMP = 0.05;

/**
 * The rule of false position, the weight of an end that stays twice being halved; every third step halves the bracket, so
 * that a jump is closed in on as well. Ends when the bracket is `width` wide, where a value is absent, or after `most` values.
 *
 * @param near size of a value that counts as none
 * Source: M. Dowell, P. Jarratt, "A modified regula falsi method for computing the root of an equation", BIT 11 (1971)
 * 168–174 (from memory).
 */
export async function seekRoot(
  f: WaitedFor,
  from: Placed,
  to: Placed,
  width: number,
  near: number,
  most = 40,
): Promise<SoughtRoot> {
  let [a, b] = [from, to];
  let [weightA, weightB] = [a.y, b.y];
  let moved = null as 'a' | 'b' | null;
  for (let count = 1; count <= most && Math.abs(b.x - a.x) > width; count++) {
    if (Math.min(Math.abs(a.y), Math.abs(b.y)) <= near) break;
    const share = count % 3 === 0 ? 0.5 : weightA / (weightA - weightB);
    const x = a.x + share * (b.x - a.x);
    const y = await f(x);
    if (y === null) break;
    if (y > 0 === b.y > 0) {
      b = { x, y };
      weightB = y;
      if (moved === 'b') weightA /= 2;
      moved = 'b';
    } else {
      a = { x, y };
      weightA = y;
      if (moved === 'a') weightB /= 2;
      moved = 'a';
    }
  }
  const nearer = Math.abs(a.y) <= Math.abs(b.y) ? a : b;
  const larger = Math.max(Math.abs(from.y), Math.abs(to.y));
  return { ...nearer, jump: Math.abs(nearer.y) > Math.max(near, JUMP * larger) };
}
