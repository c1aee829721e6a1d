import { type CatalogueEntry, SOURCE, UNIT } from './entry.ts';

/** Where a nozzle of two modes goes over. */
export const changeQuantities: readonly CatalogueEntry[] = [
  {
    name: 'change.ambientPressure',
    aliases: ['changePressure'],
    label: 'outside pressure at which the nozzle changes over',
    dimension: 'pressure',
    unit: UNIT.bar,
    unitForSmall: UNIT.pascal,
    digits: 3,
    meaning:
      'In denser air the nozzle works in its first way, in thinner air in its second: a skirt drawn up or out, an insert in place or gone.',
    equation: 'p_a: as stated, or where both push alike, or by the criteria named',
    source: 'the study, or the model of the nozzle; the answer says how',
    model: 'nozzle-skirt',
    typicalError:
      'Dual bell: as far as the criteria of separation stand apart; expansion–deflection: as the models of its wake; else exact for the two curves.',
    limits:
      'The moments of the change itself are left out. Where criteria disagree, the answer gives their band.',
    place: 'engine',
    part: { kinds: ['criterion'], needed: false, example: 'criterion Schmucker 1973' },
  },
  {
    name: 'change.altitude',
    aliases: ['changeAltitude'],
    label: 'altitude at which the nozzle changes over',
    dimension: 'length',
    unit: UNIT.kilometre,
    digits: 3,
    meaning: 'Height at which the air has that pressure.',
    equation: 'z: p_air(z) = p_a',
    source: SOURCE.air,
    model: 'air',
    typicalError: 'As the pressure at which it changes over, plus what a real day differs.',
    limits: 'Standard air; no value where no standard air has that pressure.',
    place: 'engine',
    part: { kinds: ['criterion'], needed: false, example: 'criterion Schmucker 1973' },
  },
];
