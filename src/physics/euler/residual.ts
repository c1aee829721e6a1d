/** What flows into each cell a second: second order in space by limited slopes of density, velocity, pressure and share. */

import { flowThroughFaces } from './faceFlux.ts';
import type { Field } from './field.ts';
import type { Inflow } from './inflow.ts';
import { cellAt } from './mesh.ts';
import { findSlopes } from './slopes.ts';

/**
 * @param firstOrder without slopes: robust, blurred
 */
export function addInflow(field: Field, inflow: Inflow, firstOrder: boolean): void {
  const { mass, x, y, energy, share, slopes } = inflow;
  for (const each of [mass, x, y, energy, share]) each.fill(0);
  for (const along of ['i', 'j'] as const) {
    findSlopes(field, slopes, along, firstOrder);
    flowThroughFaces(field, slopes, inflow, along);
  }
  if (field.mesh.symmetry === 'round') pushOutward(field, inflow);
}

/** The pressure on the two sides of a wedge round the axis pushes the gas outward. */
function pushOutward({ mesh, pressure }: Field, { y }: Inflow): void {
  for (let j = 0; j < mesh.nj; j++) {
    const from = cellAt(mesh, 0, j);
    for (let at = from; at < from + mesh.ni; at++) y[at] = y[at]! + pressure[at]! * mesh.planeArea[at]!;
  }
}
