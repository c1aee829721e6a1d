/** A computed field laid out for drawing: values at the middles of the cells and along the borders of each block. */

import type { Shown } from '../../answer/flow/index.ts';
import { middleIn, type PictureBlock, placeIn } from '../../physics/wholeFlow/index.ts';

/** A place of the field [m] and what is shown there, above 0. */
export interface FlowNode {
  readonly axial: number;
  readonly radius: number;
  readonly value: number;
}

/** Values at rest and in a field without slopes still need a place on a ramp. */
const LEAST = 1e-6;

/** Lines across the flow, in the order of the mesh, each from the inner to the outer border. */
export function flowLines(block: PictureBlock, shown: Shown, size: number): readonly (readonly FlowNode[])[] {
  const { ni, nj } = block;
  const values = valuesOf(block, shown, size);
  return Array.from({ length: ni + 2 }, (_, a) =>
    Array.from({ length: nj + 2 }, (_line, b) => {
      const [axial, radius] = placeIn(block, a - 1, b - 1);
      const cell = Math.min(nj - 1, Math.max(0, b - 1)) * ni + Math.min(ni - 1, Math.max(0, a - 1));
      return { axial, radius, value: Math.max(LEAST, values[cell]!) };
    }),
  );
}

function valuesOf(block: PictureBlock, shown: Shown, size: number): Float32Array {
  if (shown === 'density gradient') return gradientOf(block, size);
  if (shown === 'speed') return block.along.map((u, cell) => Math.hypot(u, block.away[cell]!));
  return block[shown];
}

/** Change of ln ρ over a length `size`: |∇ρ| size/ρ. */
function gradientOf(block: PictureBlock, size: number): Float32Array {
  const { ni, nj, density } = block;
  return density.map((_, cell) => {
    const [i, j] = [cell % ni, Math.floor(cell / ni)];
    const [a, b] = [Math.max(0, i - 1), Math.min(ni - 1, i + 1)];
    const [c, d] = [Math.max(0, j - 1), Math.min(nj - 1, j + 1)];
    const log = (m: number, n: number): number => Math.log(density[n * ni + m]!);
    const [ax, ar] = middleIn(block, a, j);
    const [bx, br] = middleIn(block, b, j);
    const [cx, cr] = middleIn(block, i, c);
    const [dx, dr] = middleIn(block, i, d);
    const [alongX, alongR, acrossX, acrossR] = [bx - ax, br - ar, dx - cx, dr - cr];
    const [along, across] = [log(b, j) - log(a, j), log(i, d) - log(i, c)];
    const det = alongX * acrossR - alongR * acrossX;
    return (
      (size * Math.hypot(along * acrossR - across * alongR, across * alongX - along * acrossX)) /
      Math.abs(det)
    );
  });
}
