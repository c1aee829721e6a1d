/** A field to begin from: one of the same numbering, or of one half as fine, its air brought to the pressure of now. */

import type { FlowPoint } from '../euler/index.ts';

/** The cells of one block to begin from, i running. */
export interface Beginning {
  readonly mesh: { readonly ni: number; readonly nj: number };
  readonly density: ArrayLike<number>;
  readonly u: ArrayLike<number>;
  readonly v: ArrayLike<number>;
  readonly pressure: ArrayLike<number>;
  readonly share: ArrayLike<number>;
}

/**
 * @param finer cells now for one along each side then
 * @param open the block whose outer corner is far out in the air
 */
export function carriedFields(
  from: readonly Beginning[],
  air: FlowPoint,
  finer: number,
  open: number,
): (x: number, y: number, block: number, i: number, j: number) => FlowPoint {
  const { mesh, pressure } = from[open]!;
  const was = pressure[mesh.ni * mesh.nj - 1]!;
  return (_x, _y, block, i, j) => {
    const { mesh: own, density, u, v, pressure: p, share } = from[block]!;
    const [row, column] = [Math.floor(j / finer), Math.floor(i / finer)];
    const along = ((i % finer) + 0.5) / finer - 0.5;
    const up = ((j % finer) + 0.5) / finer - 0.5;
    const read = (of: ArrayLike<number>): number => {
      const cell = row * own.ni + column;
      const here = of[cell]!;
      if (finer === 1) return here;
      const slope = (place: number, last: number, step: number): number =>
        place === 0 || place === last ? 0 : lesser(here - of[cell - step]!, of[cell + step]! - here);
      return here + along * slope(column, own.ni - 1, 1) + up * slope(row, own.nj - 1, own.ni);
    };
    const point = { density: read(density), u: read(u), v: read(v), pressure: read(p), share: read(share) };
    if (point.share > 0.5) return point;
    const factor = air.pressure / was;
    return { ...point, density: point.density * factor, pressure: point.pressure * factor };
  };
}

/** The smaller of two slopes of one sign, none where their signs differ: no new extreme appears. */
function lesser(a: number, b: number): number {
  if (a * b <= 0) return 0;
  return Math.abs(a) < Math.abs(b) ? a : b;
}
