/** One block of a mesh that follows the walls: its cells' volumes and its faces, so that a uniform gas at rest stays so. */

import { ProblemError } from '../../numerics/problem.ts';

/** `round`: about the axis y = 0, all areas and volumes a radian; `flat`: a metre deep. */
export type MeshSymmetry = 'round' | 'flat';

/** Layers of cells beyond each side that hold what lies there. */
export const GHOSTS = 2;

export interface MeshBlock {
  readonly symmetry: MeshSymmetry;
  /** Cells along the first and the second index. */ readonly ni: number;
  readonly nj: number;
  /** Nodes [m], (ni + 1)(nj + 1), the first index running. */ readonly x: Float64Array;
  readonly y: Float64Array;
  /** Of each cell with its ghosts, see {@link cellAt}; ghosts hold 1. [m³] or [m³/rad] */
  readonly volume: Float64Array;
  /** In the plane [m²]: what the pressure of a round field pushes outward on a cell. */ readonly planeArea: Float64Array;
  /** Area vectors towards the growing first index, face i of row j at j(ni + 1) + i. [m²] or [m²/rad] */
  readonly iFaceX: Float64Array;
  readonly iFaceY: Float64Array;
  /** Towards the growing second index, face j of column i at j ni + i. */
  readonly jFaceX: Float64Array;
  readonly jFaceY: Float64Array;
}

/** Cells in a row with its ghosts. */
export function strideOf({ ni }: { readonly ni: number }): number {
  return ni + 2 * GHOSTS;
}

/** Place of a cell in the arrays of a field; ghosts have indices below 0 and from ni, nj on. */
export function cellAt(block: { readonly ni: number }, i: number, j: number): number {
  return (j + GHOSTS) * strideOf(block) + i + GHOSTS;
}

/**
 * @param node place of node (i, j), i from 0 to ni, j from 0 to nj; i, j and the normal out of the plane right-handed
 * @throws ProblemError where a cell is folded or lies across the axis
 */
export function meshBlock(
  symmetry: MeshSymmetry,
  ni: number,
  nj: number,
  node: (i: number, j: number) => readonly [x: number, y: number],
): MeshBlock {
  const x = new Float64Array((ni + 1) * (nj + 1));
  const y = new Float64Array((ni + 1) * (nj + 1));
  for (let j = 0; j <= nj; j++) {
    for (let i = 0; i <= ni; i++) [x[j * (ni + 1) + i], y[j * (ni + 1) + i]] = node(i, j);
  }
  const cells = strideOf({ ni }) * (nj + 2 * GHOSTS);
  const block = {
    symmetry,
    ni,
    nj,
    x,
    y,
    volume: new Float64Array(cells).fill(1),
    planeArea: new Float64Array(cells),
    iFaceX: new Float64Array((ni + 1) * nj),
    iFaceY: new Float64Array((ni + 1) * nj),
    jFaceX: new Float64Array(ni * (nj + 1)),
    jFaceY: new Float64Array(ni * (nj + 1)),
  };
  measureFaces(block);
  measureCells(block);
  return block;
}

function measureFaces({ symmetry, ni, nj, x, y, iFaceX, iFaceY, jFaceX, jFaceY }: MeshBlock): void {
  const round = symmetry === 'round';
  const face = (a: number, b: number, at: number, toX: Float64Array, toY: Float64Array, sign: number) => {
    const reach = round ? (y[a]! + y[b]!) / 2 : 1;
    toX[at] = sign * (y[b]! - y[a]!) * reach;
    toY[at] = sign * (x[a]! - x[b]!) * reach;
  };
  const row = ni + 1;
  for (let j = 0; j < nj; j++)
    for (let i = 0; i <= ni; i++) face(j * row + i, (j + 1) * row + i, j * row + i, iFaceX, iFaceY, 1);
  for (let j = 0; j <= nj; j++)
    for (let i = 0; i < ni; i++) face(j * row + i, j * row + i + 1, j * ni + i, jFaceX, jFaceY, -1);
}

function measureCells({ symmetry, ni, nj, x, y, volume, planeArea }: MeshBlock): void {
  const row = ni + 1;
  for (let j = 0; j < nj; j++) {
    for (let i = 0; i < ni; i++) {
      const [a, b, c, d] = [j * row + i, j * row + i + 1, (j + 1) * row + i + 1, (j + 1) * row + i];
      const one = triangle(x, y, a, b, c);
      const two = triangle(x, y, a, c, d);
      const area = one + two;
      const reach = (p: number, q: number, r: number): number => (y[p]! + y[q]! + y[r]!) / 3;
      const size = symmetry === 'flat' ? area : one * reach(a, b, c) + two * reach(a, c, d);
      const across = symmetry === 'round' && [a, b, c, d].some((n) => y[n]! < 0);
      if (!(area > 0) || !(size > 0) || across) throw folded(i, j, x[a]!, y[a]!);
      const at = cellAt({ ni }, i, j);
      volume[at] = size;
      planeArea[at] = symmetry === 'flat' ? 0 : area;
    }
  }
}

function triangle(x: Float64Array, y: Float64Array, a: number, b: number, c: number): number {
  return ((x[b]! - x[a]!) * (y[c]! - y[a]!) - (x[c]! - x[a]!) * (y[b]! - y[a]!)) / 2;
}

function folded(i: number, j: number, x: number, y: number): ProblemError {
  return new ProblemError({
    code: 'mesh-folded',
    what: `Cell ${i}, ${j} of the mesh, at x = ${x} m, y = ${y} m, is folded or lies across the axis.`,
    mend: 'Give nodes that run right-handed, none of them below the axis of a round field.',
    facts: { i, j, x, y },
  });
}
