/**
 * Cells in which a strong shock lies, by the direction that it lies across: faces of the other direction, which stand across
 * it, take no contact.
 */

import type { Field } from './field.ts';
import { cellAt, strideOf } from './mesh.ts';

/** A jump of pressure over two cells, against the lower one, from which a shock is strong. */
export const STRONG = 0.8;

/** Marks all inner cells; ghosts must hold what is beyond. */
export function markShocks({ mesh, pressure, shockI, shockJ }: Field): void {
  const stride = strideOf(mesh);
  for (let j = 0; j < mesh.nj; j++) {
    const from = cellAt(mesh, 0, j);
    for (let at = from; at < from + mesh.ni; at++) {
      shockI[at] = jump(pressure[at - 1]!, pressure[at + 1]!);
      shockJ[at] = jump(pressure[at - stride]!, pressure[at + stride]!);
    }
  }
}

function jump(before: number, behind: number): 0 | 1 {
  const [low, high] = before > behind ? [behind, before] : [before, behind];
  return high - low > STRONG * low ? 1 : 0;
}
