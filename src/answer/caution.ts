/** The caution that everything leaving the program carries. */

import type { PropellantRecord } from '../physics/gas/records.ts';

export const CAUTION =
  'For explanation and comparison only, not for building, pressurising or firing hardware. ' +
  'Such work falls under local law and codes and is for licensed people. ' +
  'The propellants named here, liquid, gaseous and solid mixtures alike, burn, poison or detonate.';

/** One line for each propellant used, once, in the order used. */
export function hazardsOf(records: readonly PropellantRecord[]): readonly string[] {
  const seen = new Map<string, string>();
  for (const record of records) seen.set(record.id, `${record.name}: ${record.hazard}`);
  return [...seen.values()];
}

/** Added where ingredients are mixed before they burn. */
export const SOLID_MIXTURE_HAZARD =
  'Mixtures of oxidiser and fuel in one body, solid propellants among them, burn without air, can hardly be put out, and may detonate while they are mixed, cast, cut, stored or lit.';
