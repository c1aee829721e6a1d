import { type CatalogueEntry, SOURCE, UNIT } from './entry.ts';

const ofPair = {
  source: 'difference of two computed values',
  model: 'comparison',
  typicalError: 'That of both engines; what they share cancels.',
  limits: 'Errors that both engines share cancel in the difference; errors of one nozzle model alone do not.',
  place: 'comparison',
  notAsked: {
    why: 'It belongs to two engines.',
    instead:
      'Ask each engine, and take the difference or the ratio, e.g. plug.thrust(10 km) − bell.thrust(10 km).',
  },
} as const;

/** Belongs to the pair that is compared. */
export const comparisonQuantities: readonly CatalogueEntry[] = [
  {
    ...ofPair,
    name: 'comparison.difference',
    label: 'difference',
    dimension: 'sameAsCompared',
    unit: UNIT.one,
    digits: 3,
    meaning: 'How much more the second engine has than the first, in the unit of what is compared.',
    equation: 'Δ = other − base',
  },
  {
    ...ofPair,
    name: 'comparison.share',
    label: 'difference in per cent',
    dimension: 'ratio',
    unit: UNIT.percent,
    digits: 2,
    meaning: 'How much more the second engine has than the first, as a share of the first.',
    equation: 'δ = (other − base)/|base|',
  },
  {
    ...ofPair,
    name: 'comparison.crossing',
    label: 'altitude at which the two tie',
    dimension: 'length',
    unit: UNIT.kilometre,
    digits: 2,
    meaning: 'Height at which both engines have the same specific impulse.',
    equation: 'z: I_sp,other(z) = I_sp,base(z)',
    source: SOURCE.air,
  },
];
