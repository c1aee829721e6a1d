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
    const cell = Math.floor(j / finer) * own.ni + Math.floor(i / finer);
    const point = {
      density: density[cell]!,
      u: u[cell]!,
      v: v[cell]!,
      pressure: p[cell]!,
      share: share[cell]!,
    };
    if (point.share > 0.5) return point;
    const factor = air.pressure / was;
    return { ...point, density: point.density * factor, pressure: point.pressure * factor };
  };
}
