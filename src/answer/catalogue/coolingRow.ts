/** What the rows of the catalogue on cooling have in common. */

import { type CatalogueEntry, UNIT } from './entry.ts';
import type { Row } from './heat.ts';
import { TYPICAL_ERROR } from './typicalError.ts';

export const coolingMarch = {
  source:
    'three resistances in a row (any textbook); Bartz 1957; Gnielinski 1976, Taylor 1968 and others (docs/methods/heat-cooling.md); coolant by CoolProp 8.0.0',
  model: 'heat-cooling',
  typicalError: TYPICAL_ERROR.cooling,
  limits:
    'Steady, clean walls, plain channels against the flow of the gas; no boiling at the wall, no bends, no heat along the wall, no stress or fatigue, no ablation. For comparison, not for building, pressurising or firing hardware.',
  place: 'engine',
} as const;

export const coolingEntry = ([
  name,
  label,
  dimension,
  unit,
  digits,
  meaning,
  equation,
]: Row): CatalogueEntry => ({
  ...coolingMarch,
  name: `cooling.${name}`,
  label,
  dimension,
  unit,
  digits,
  meaning,
  equation,
  ...(dimension === 'power' && { unitForSmall: UNIT.kilowatt }),
  ...(dimension === 'heatFlux' && { unitForSmall: UNIT.kilowattPerSquareMetre }),
  ...(dimension === 'massFlow' && { unitForSmall: UNIT.gramPerSecond }),
});
