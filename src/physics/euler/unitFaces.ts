/** The faces of a block as kernels read them: unit normals and areas, at the place of the cell before each. */

import type { Reals } from './field.ts';
import { cellAt, type MeshBlock } from './mesh.ts';

/** Normals along x and y, and areas; those of faces without area stay 0. */
type Faces = readonly [x: Reals, y: Reals, area: Reals];

export function unitFaces(
  { ni, nj, iFaceX, iFaceY, jFaceX, jFaceY }: MeshBlock,
  first: Faces,
  second: Faces,
): void {
  const face = (x: number, y: number, cell: number, [toX, toY, toArea]: Faces): void => {
    const area = Math.sqrt(x * x + y * y);
    if (area === 0) return;
    toX[cell] = x / area;
    toY[cell] = y / area;
    toArea[cell] = area;
  };
  for (let j = 0; j < nj; j++)
    for (let i = 0; i <= ni; i++) {
      const k = j * (ni + 1) + i;
      face(iFaceX[k]!, iFaceY[k]!, cellAt({ ni }, i - 1, j), first);
    }
  for (let j = 0; j <= nj; j++)
    for (let i = 0; i < ni; i++) {
      const k = j * ni + i;
      face(jFaceX[k]!, jFaceY[k]!, cellAt({ ni }, i, j - 1), second);
    }
}
