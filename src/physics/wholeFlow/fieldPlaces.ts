/** A field between the middles of its cells: which four of them a place lies between, and what holds there. */

import { middleIn, type PictureBlock } from './flowPicture.ts';

/** What of a block can be read at a place. */
export type FieldValue = 'pressure' | 'mach' | 'density' | 'temperature' | 'along' | 'away' | 'share';

export interface FieldReader {
  /** Go to a place; false where the field does not reach. The way from the last place is short. */
  goTo(axial: number, radius: number): boolean;
  /** At the place gone to, linear between its four neighbours. */ read(value: FieldValue): number;
  /** [m] about the size of the cells there */ size(): number;
}

/** Middles with the borders round them, (ni + 2)(nj + 2), j running. */
interface Lattice {
  readonly block: PictureBlock;
  readonly ni: number;
  readonly nj: number;
  readonly axial: Float64Array;
  readonly radius: Float64Array;
}

export function fieldReader(blocks: readonly PictureBlock[]): FieldReader {
  const lattices = blocks.map(latticeOf);
  // Where it stands: lattice, its cell, and the shares of the way across it.
  let [b, i, j, s, t] = [0, 0, 0, 0, 0];

  function standsIn(which: number, atI: number, atJ: number, axial: number, radius: number): boolean {
    const found = sharesIn(lattices[which]!, atI, atJ, axial, radius);
    if (found === null) return false;
    [b, i, j, s, t] = [which, atI, atJ, found[0], found[1]];
    return isInside(s, t);
  }

  /** Cell after cell towards the place, within the block where it stands. */
  function walks(axial: number, radius: number): boolean {
    const { ni, nj } = lattices[b]!;
    for (let step = 0; step < MOST_STEPS; step++) {
      if (standsIn(b, i, j, axial, radius)) return true;
      const nextI = i + (s < 0 ? -1 : s > 1 ? 1 : 0);
      const nextJ = j + (t < 0 ? -1 : t > 1 ? 1 : 0);
      const [atI, atJ] = [Math.min(ni, Math.max(0, nextI)), Math.min(nj, Math.max(0, nextJ))];
      if (atI === i && atJ === j) return false;
      [i, j] = [atI, atJ];
    }
    return false;
  }

  function searches(axial: number, radius: number): boolean {
    for (const [which, { ni, nj, ...lattice }] of lattices.entries())
      for (let atI = 0; atI <= ni; atI++)
        for (let atJ = 0; atJ <= nj; atJ++)
          if (isNear(lattice, nj, atI, atJ, axial, radius) && standsIn(which, atI, atJ, axial, radius))
            return true;
    return false;
  }

  return {
    goTo: (axial, radius) => walks(axial, radius) || searches(axial, radius),
    read(value) {
      const { block, ni, nj, radius } = lattices[b]!;
      const all = block[value];
      const at = (di: number, dj: number): number => {
        // On the axis nothing moves away from it.
        if (value === 'away' && radius[(i + di) * (nj + 2) + j + dj] === 0) return 0;
        const [cellI, cellJ] = [i + di - 1, j + dj - 1];
        return all[Math.min(nj - 1, Math.max(0, cellJ)) * ni + Math.min(ni - 1, Math.max(0, cellI))]!;
      };
      return (1 - s) * ((1 - t) * at(0, 0) + t * at(0, 1)) + s * ((1 - t) * at(1, 0) + t * at(1, 1));
    },
    size() {
      const { axial, radius, nj } = lattices[b]!;
      const k = i * (nj + 2) + j;
      const across = Math.hypot(axial[k + 1]! - axial[k]!, radius[k + 1]! - radius[k]!);
      const m = k + nj + 2;
      const along = Math.hypot(axial[m]! - axial[k]!, radius[m]! - radius[k]!);
      return Math.min(across, along);
    },
  };
}

const MOST_STEPS = 400;
/** How far outside of a cell, over its size, still counts as in it: two blocks share a border that is rounded. */
const EDGE = 1e-4;
const isInside = (s: number, t: number): boolean =>
  s >= -EDGE && s <= 1 + EDGE && t >= -EDGE && t <= 1 + EDGE;

function latticeOf(block: PictureBlock): Lattice {
  const { ni, nj } = block;
  const axial = new Float64Array((ni + 2) * (nj + 2));
  const radius = new Float64Array((ni + 2) * (nj + 2));
  for (let i = -1; i <= ni; i++)
    for (let j = -1; j <= nj; j++) {
      const k = (i + 1) * (nj + 2) + j + 1;
      [axial[k], radius[k]] = placeIn(block, i, j);
    }
  return { block, ni, nj, axial, radius };
}

/** Middle of a cell; −1 and one past the last: on the border, and in its corners. [m] */
export function placeIn(block: PictureBlock, i: number, j: number): readonly [number, number] {
  const { ni, nj, axial, radius } = block;
  const isEnd = i < 0 || i >= ni;
  const isSide = j < 0 || j >= nj;
  if (!isEnd && !isSide) return middleIn(block, i, j);
  const node = (a: number, c: number): readonly [number, number] => [
    axial[c * (ni + 1) + a]!,
    radius[c * (ni + 1) + a]!,
  ];
  const [a, c] = [Math.min(ni, Math.max(0, i)), Math.min(nj, Math.max(0, j))];
  const [one, other] = [node(a, c), isEnd && isSide ? node(a, c) : isEnd ? node(a, c + 1) : node(a + 1, c)];
  return [(one[0] + other[0]) / 2, (one[1] + other[1]) / 2];
}

function isNear(
  { axial, radius }: Pick<Lattice, 'axial' | 'radius'>,
  nj: number,
  i: number,
  j: number,
  x: number,
  y: number,
): boolean {
  const k = i * (nj + 2) + j;
  const m = k + nj + 2;
  const between = (all: Float64Array, at: number): boolean => {
    const [low, high] = [
      Math.min(all[k]!, all[k + 1]!, all[m]!, all[m + 1]!),
      Math.max(all[k]!, all[k + 1]!, all[m]!, all[m + 1]!),
    ];
    const room = EDGE * (high - low);
    return at >= low - room && at <= high + room;
  };
  return between(axial, x) && between(radius, y);
}

/** Shares of the way along the first and the second index by Newton’s method; null where the cell has no area. */
function sharesIn(
  { axial, radius, nj }: Lattice,
  i: number,
  j: number,
  x: number,
  y: number,
): readonly [number, number] | null {
  const k = i * (nj + 2) + j;
  const m = k + nj + 2;
  const [x0, y0] = [axial[k]!, radius[k]!];
  const [xs, ys] = [axial[m]! - x0, radius[m]! - y0];
  const [xt, yt] = [axial[k + 1]! - x0, radius[k + 1]! - y0];
  const [xst, yst] = [axial[m + 1]! - x0 - xs - xt, radius[m + 1]! - y0 - ys - yt];
  let [s, t] = [0.5, 0.5];
  for (let round = 0; round < ROUNDS; round++) {
    const [fx, fy] = [x0 + s * xs + t * xt + s * t * xst - x, y0 + s * ys + t * yt + s * t * yst - y];
    const [ax, ay, bx, by] = [xs + t * xst, ys + t * yst, xt + s * xst, yt + s * yst];
    const det = ax * by - ay * bx;
    if (det === 0) return null;
    const [ds, dt] = [(fx * by - fy * bx) / det, (ax * fy - ay * fx) / det];
    s -= ds;
    t -= dt;
    if (Math.abs(ds) + Math.abs(dt) < 1e-10) break;
  }
  return Number.isFinite(s + t) ? [s, t] : null;
}

const ROUNDS = 8;
