/** What flows into each cell a second: second order in space by limited slopes of density, velocity, pressure and share. */

import { flowThroughFaces } from './faceFlux.ts';
import type { Field } from './field.ts';
import { cellAt } from './mesh.ts';
import { findSlopes, type Slopes, slopesFor } from './slopes.ts';

/** Into each cell a second, all faces together; ghosts hold nothing. */
export interface Inflow {
  readonly mass: Float64Array;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly energy: Float64Array;
  readonly share: Float64Array;
  /** Work space. */ readonly slopes: Slopes;
}

export function inflowFor(field: Field): Inflow {
  const array = (): Float64Array => new Float64Array(field.density.length);
  return { mass: array(), x: array(), y: array(), energy: array(), share: array(), slopes: slopesFor(field) };
}

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
