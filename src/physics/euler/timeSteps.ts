/** How long a step may be: no wave further than a share of a cell. */

import { type Field, type Reals, soundSpeedAt } from './field.ts';
import { cellAt } from './mesh.ts';

/** [s] */
export function shortestStep(field: Field): number {
  let shortest = Number.POSITIVE_INFINITY;
  for (let j = 0; j < field.mesh.nj; j++) {
    for (let i = 0; i < field.mesh.ni; i++) {
      const own = sweepTime(field, i, j);
      if (own < shortest) shortest = own;
    }
  }
  return shortest;
}

/** Each cell's own longest step times the share `courant`. [s] */
export function ownSteps(field: Field, courant: number, steps: Float64Array): Float64Array {
  for (let j = 0; j < field.mesh.nj; j++) {
    for (let i = 0; i < field.mesh.ni; i++)
      steps[cellAt(field.mesh, i, j)] = courant * sweepTime(field, i, j);
  }
  return steps;
}

/** None longer than `most` [s]. */
export function shortenTo(steps: readonly Reals[], most: number): void {
  for (const each of steps) for (let k = 0; k < each.length; k++) if (each[k]! > most) each[k] = most;
}

/** Volume over what the fastest waves sweep in a second [s]. */
function sweepTime(field: Field, i: number, j: number): number {
  const { mesh, u, v } = field;
  const { ni, iFaceX, iFaceY, jFaceX, jFaceY } = mesh;
  const at = cellAt(mesh, i, j);
  const a = j * (ni + 1) + i;
  const b = j * ni + i;
  const sound = soundSpeedAt(field, at);
  const across = swept(u[at]!, v[at]!, sound, iFaceX[a]! + iFaceX[a + 1]!, iFaceY[a]! + iFaceY[a + 1]!);
  const along = swept(u[at]!, v[at]!, sound, jFaceX[b]! + jFaceX[b + ni]!, jFaceY[b]! + jFaceY[b + ni]!);
  return (2 * mesh.volume[at]!) / (across + along);
}

/** Through two faces together. */
function swept(u: number, v: number, sound: number, x: number, y: number): number {
  return Math.abs(u * x + v * y) + sound * Math.sqrt(x * x + y * y);
}
