/** Cells copied with all that they hold, from one field into another. */

import { CELL_VALUES, type Field } from './field.ts';

/** Places of the cells, one for one. */
export interface CellCopies {
  readonly into: Int32Array;
  readonly from: Int32Array;
}

export function copyCells(own: Field, other: Field, { into, from }: CellCopies): void {
  for (const key of CELL_VALUES) {
    const to = own[key];
    const there = other[key];
    for (let k = 0; k < into.length; k++) to[into[k]!] = there[from[k]!]!;
  }
}

export function copyCell(field: Field, to: number, from: number): void {
  const { density, u, v, pressure, share, energy, kappa, eta, zeta } = field;
  density[to] = density[from]!;
  u[to] = u[from]!;
  v[to] = v[from]!;
  pressure[to] = pressure[from]!;
  share[to] = share[from]!;
  energy[to] = energy[from]!;
  kappa[to] = kappa[from]!;
  eta[to] = eta[from]!;
  zeta[to] = zeta[from]!;
}
