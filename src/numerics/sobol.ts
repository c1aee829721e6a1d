/**
 * Points that fill the unit cube evenly: the Sobol sequence, plain or scrambled.
 *
 * Sources: I. M. Sobol', USSR Comput. Math. Math. Phys. 7(4) (1967) 86–112; direction numbers of S. Joe and F. Y. Kuo, see
 * sobolDirections.ts; scrambling: A. B. Owen, "Randomly permuted (t,m,s)-nets and (t,s)-sequences", 1995 (nested uniform: each
 * binary digit is flipped or not by a coin that hangs on all digits before it).
 */

import { SOBOL_DIRECTIONS } from './sobolDirections.ts';

const BITS = 32;
const SCALE = 2 ** -BITS;
/** Half of the last digit: no coordinate is 0 or 1. */
const MIDDLE = 0.5 * SCALE;

export const MOST_SOBOL_DIMENSIONS = SOBOL_DIRECTIONS.length;

export interface SobolPoints {
  readonly count: number;
  readonly dimensions: number;
  /** Coordinate of a point, 0 < x < 1 (0 ≤ x where plain). */ at(point: number, dimension: number): number;
}

/**
 * The first `count` points.
 *
 * @param seed of the scrambling; null: none. Points of different seeds are independent, those of one fill the cube evenly.
 * @throws RangeError for more dimensions than there are direction numbers
 */
export function sobolPoints(count: number, dimensions: number, seed: number | null): SobolPoints {
  if (!(dimensions >= 0 && dimensions <= MOST_SOBOL_DIMENSIONS)) {
    throw new RangeError(
      `${dimensions} dimensions; there are direction numbers for ${MOST_SOBOL_DIMENSIONS}`,
    );
  }
  const digits = new Uint32Array(count * dimensions);
  for (let d = 0; d < dimensions; d++) {
    const directions = directionNumbers(d);
    let x = 0;
    for (let i = 0; i < count; i++) {
      if (i > 0) x ^= directions[trailingZeros(i)]!;
      digits[i * dimensions + d] = x;
    }
  }
  if (seed !== null) {
    for (let d = 0; d < dimensions; d++) {
      const own = mixed(seed >>> 0, d + 1);
      for (let i = 0; i < count; i++)
        digits[i * dimensions + d] = scrambled(digits[i * dimensions + d]!, own);
    }
  }
  const shift = seed === null ? 0 : MIDDLE;
  return { count, dimensions, at: (point, d) => digits[point * dimensions + d]! * SCALE + shift };
}

/** v_j = m_j 2^(32−j): m_j by the recurrence of the dimension's polynomial. */
function directionNumbers(dimension: number): Uint32Array {
  const [polynomial, start] = SOBOL_DIRECTIONS[dimension]!;
  const degree = 31 - Math.clz32(polynomial);
  const v = new Uint32Array(BITS);
  for (let j = 0; j < BITS; j++) {
    if (degree === 0) {
      v[j] = (1 << (BITS - 1 - j)) >>> 0;
    } else if (j < degree) {
      v[j] = (start[j]! << (BITS - 1 - j)) >>> 0;
    } else {
      let x = v[j - degree]! ^ (v[j - degree]! >>> degree);
      for (let k = 1; k < degree; k++) if ((polynomial >> (degree - k)) & 1) x ^= v[j - k]!;
      v[j] = x >>> 0;
    }
  }
  return v;
}

/** Number of the lowest digit of i that is one; that of Gray's code changes there. */
function trailingZeros(i: number): number {
  return 31 - Math.clz32(i & -i);
}

function scrambled(x: number, seed: number): number {
  let flipped = 0;
  for (let bit = BITS - 1; bit >= 0; bit--) {
    // All digits above this one, and a mark of where they end.
    const before = bit === BITS - 1 ? 1 : ((x >>> (bit + 1)) | (1 << (BITS - 1 - bit))) >>> 0;
    flipped |= (mixed(seed, before) & 1) << bit;
  }
  return (x ^ flipped) >>> 0;
}

/** A number from two, all digits thoroughly mixed (the finaliser of G. L. Steele, D. Lea, C. H. Flood, 2014, after D. Stafford; 32 bits). */
function mixed(a: number, b: number): number {
  let x = (a ^ Math.imul(b, 0x9e3779b9)) >>> 0;
  x = Math.imul(x ^ (x >>> 16), 0x85ebca6b) >>> 0;
  x = Math.imul(x ^ (x >>> 13), 0xc2b2ae35) >>> 0;
  x = (x ^ (x >>> 16)) >>> 0;
  x = Math.imul(x + b, 0x9e3779b1) >>> 0;
  x = Math.imul(x ^ (x >>> 15), 0x846ca68b) >>> 0;
  return (x ^ (x >>> 16)) >>> 0;
}
