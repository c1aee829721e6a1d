/** What the rows of the catalogue on cycles have in common. */

import type { CatalogueEntry, Dimension, DisplayUnit } from './entry.ts';

const balanceSource =
  'M. Martinez-Sanchez, MIT 16.512 Rocket Propulsion, lecture 25; A. J. Sobin, W. R. Bissell, NASA SP-8107, 1974';
export const ofCycle = {
  model: 'cycle',
  source: balanceSource,
  typicalError:
    'Pump power of three public engines within 30 % with the usual drops and efficiencies; the efficiencies’ own ± decides (docs/methods/cycle.md).',
  limits:
    'A balance of powers with stated efficiencies and drops, steady, one shaft in effect. For comparison, not for building.',
} as const;
export type CycleCommon = Pick<CatalogueEntry, 'model' | 'source' | 'typicalError' | 'limits' | 'place'>;

export type CycleRow = readonly [
  key: string,
  label: string,
  dimension: Dimension,
  unit: DisplayUnit,
  meaning: string,
  equation: string,
  rest?: Partial<CatalogueEntry>,
];

export function cycleEntry(
  common: CycleCommon,
  [key, label, dimension, unit, meaning, equation, rest]: CycleRow,
): CatalogueEntry {
  return { ...common, name: `cycle.${key}`, label, dimension, unit, digits: 3, meaning, equation, ...rest };
}
