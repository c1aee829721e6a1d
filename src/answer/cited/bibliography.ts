/**
 * Every work that the program's own texts name, in one list.
 * Titles, journals and publishers are from memory unless the work's page in docs/methods says that it was read.
 */

import type { Work } from './work.ts';
import { DATA_WORKS } from './works/data.ts';
import { FIELD_WORKS } from './works/field.ts';
import { GAS_WORKS } from './works/gas.ts';
import { HEAT_WORKS } from './works/heat.ts';
import { NOZZLE_WORKS } from './works/nozzle.ts';
import { NUMERICS_WORKS } from './works/numerics.ts';
import { VEHICLE_WORKS } from './works/vehicle.ts';

export const BIBLIOGRAPHY: readonly Work[] = [
  ...GAS_WORKS,
  ...FIELD_WORKS,
  ...NOZZLE_WORKS,
  ...HEAT_WORKS,
  ...VEHICLE_WORKS,
  ...NUMERICS_WORKS,
  ...DATA_WORKS,
];

/** Works that a text names, in the order of the list. */
export function worksNamedIn(text: string): readonly Work[] {
  const line = text.replace(/[*_]/g, '').replace(/\s+/g, ' ');
  return BIBLIOGRAPHY.filter(({ named }) => named.test(line));
}

/** Where nothing is cited, and that is meant so. */
const OWN = [
  /no source needed/,
  /^the study/,
  /common practice/,
  /from memory/,
  /^(balance|difference) of/,
  /^flow field/,
  /^membrane stress/,
  /^energy balance/,
  /^point mass/,
  /^named beside/,
  /each with its source/,
  /^element in its reference state$/,
  /^ideal gas/,
];

/** True where a text cites nothing and says why, or what stands instead. */
export function citesNothing(text: string): boolean {
  return OWN.some((form) => form.test(text));
}
