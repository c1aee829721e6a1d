/** The mean pressure on a base: the face of a plug or a pintle where it is cut, behind which its wake begins. */

import { cellAt, type Field } from '../euler/index.ts';

/** Over the first `rows` rows of the block behind it [Pa]. */
export function meanOnBase({ mesh, pressure }: Field, rows: number): number {
  let [push, area] = [0, 0];
  for (let j = 0; j < rows; j++) {
    const a = mesh.iFaceX[j * (mesh.ni + 1)]!;
    push += a * pressure[cellAt(mesh, 0, j)]!;
    area += a;
  }
  return push / area;
}
