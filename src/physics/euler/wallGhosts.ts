/** Beyond a wall the flow carried straight on, so that the cell beside it keeps its slope; beyond the axis the flow mirrored. */

import { copyCell } from './cellCopies.ts';
import type { Field } from './field.ts';
import { GHOSTS } from './mesh.ts';
import { cellFrom, hasArea, outward } from './sideGeometry.ts';
import type { SidePart } from './sides.ts';

/** Fills the ghosts beyond a part of a side each time that it is called. */
export function wallFill(field: Field, { side, from, to }: SidePart): () => void {
  const { mesh } = field;
  const count = to - from;
  const cells = (depth: number): Int32Array =>
    Int32Array.from({ length: count }, (_, k) => cellFrom(mesh, side, from + k, depth));
  const near = cells(0);
  const next = cells(1);
  const layers = Array.from({ length: GHOSTS }, (_, layer) => ({
    ghosts: cells(-1 - layer),
    mirrored: cells(layer),
  }));
  const isDeep = side.startsWith('i') ? mesh.ni > 1 : mesh.nj > 1;
  const carried = Uint8Array.from({ length: count }, (_, k) =>
    isDeep && hasArea(mesh, side, from + k) ? 1 : 0,
  );
  const normals = Float64Array.from(
    Array.from({ length: count }, (_, k) => outward(mesh, side, from + k)).flat(),
  );
  const { density, u, v, pressure } = field;
  return () => {
    for (let layer = 0; layer < GHOSTS; layer++) {
      const { ghosts, mirrored } = layers[layer]!;
      for (let k = 0; k < count; k++) {
        const ghost = ghosts[k]!;
        if (carried[k] === 1) {
          const a = near[k]!;
          const b = next[k]!;
          const rho = density[a]! + (layer + 1) * (density[a]! - density[b]!);
          const p = pressure[a]! + (layer + 1) * (pressure[a]! - pressure[b]!);
          if (rho > 0 && p > 0) {
            copyCell(field, ghost, a);
            density[ghost] = rho;
            pressure[ghost] = p;
            u[ghost] = u[a]! + (layer + 1) * (u[a]! - u[b]!);
            v[ghost] = v[a]! + (layer + 1) * (v[a]! - v[b]!);
            continue;
          }
        }
        const inside = mirrored[k]!;
        const nx = normals[2 * k]!;
        const ny = normals[2 * k + 1]!;
        copyCell(field, ghost, inside);
        const through = u[inside]! * nx + v[inside]! * ny;
        u[ghost] = u[inside]! - 2 * through * nx;
        v[ghost] = v[inside]! - 2 * through * ny;
      }
    }
  };
}
