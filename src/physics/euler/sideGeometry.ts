/** Where the sides of a block lie among its cells and faces. */

import { cellAt, type MeshBlock } from './mesh.ts';

/** Where the first index begins and ends, and the second. */
export type SideName = 'iLow' | 'iHigh' | 'jLow' | 'jHigh';

/** Cells along that side. */
export function cellsAlong({ ni, nj }: MeshBlock, side: SideName): number {
  return side === 'iLow' || side === 'iHigh' ? nj : ni;
}

/** A cell counted from a side: `depth` 0 is the first inside, −1 the first beyond. */
export function cellFrom(mesh: MeshBlock, side: SideName, along: number, depth: number): number {
  switch (side) {
    case 'iLow':
      return cellAt(mesh, depth, along);
    case 'iHigh':
      return cellAt(mesh, mesh.ni - 1 - depth, along);
    case 'jLow':
      return cellAt(mesh, along, depth);
    case 'jHigh':
      return cellAt(mesh, along, mesh.nj - 1 - depth);
  }
}

/** Place of a side's face among the mesh's faces of its direction. */
export function faceOf({ ni, nj }: MeshBlock, side: SideName, along: number): number {
  switch (side) {
    case 'iLow':
      return along * (ni + 1);
    case 'iHigh':
      return along * (ni + 1) + ni;
    case 'jLow':
      return along;
    case 'jHigh':
      return nj * ni + along;
  }
}

/** A face on the axis has no area. */
export function hasArea(mesh: MeshBlock, side: SideName, along: number): boolean {
  const face = faceOf(mesh, side, along);
  if (side === 'iLow' || side === 'iHigh') return mesh.iFaceX[face] !== 0 || mesh.iFaceY[face] !== 0;
  return mesh.jFaceX[face] !== 0 || mesh.jFaceY[face] !== 0;
}

/** Unit normal of a side's face, out of the block; towards the axis where the face has no area, for it lies on it. */
export function outward(mesh: MeshBlock, side: SideName, along: number): readonly [number, number] {
  const face = faceOf(mesh, side, along);
  const across = side === 'iLow' || side === 'iHigh';
  const sign = side === 'iLow' || side === 'jLow' ? -1 : 1;
  const x = (across ? mesh.iFaceX : mesh.jFaceX)[face]!;
  const y = (across ? mesh.iFaceY : mesh.jFaceY)[face]!;
  const length = Math.hypot(x, y);
  if (length === 0) return [0, -1];
  return [(sign * x) / length, (sign * y) / length];
}
