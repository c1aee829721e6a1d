import { type CatalogueEntry, UNIT } from './entry.ts';
import { INNER_CONTOUR } from './innerContour.ts';

/** Of expansion–deflection nozzles. */
export const pintleQuantities: readonly CatalogueEntry[] = (
  [
    [
      'throatGap',
      'width of the throat round the pintle',
      'Gap between outer wall and pintle on the throat line, which lies a little behind the narrowest passage.',
      'g = (r_o − r_i) / cos θ_t',
    ],
    [
      'throatArc',
      'radius of curvature of the throat round the pintle',
      'Of the outer wall ahead of it: 2.5 half gaps, less where the opening inside it leaves no room.',
      'r_c',
    ],
  ] as const
).map(([key, label, meaning, equation]) => ({
  name: `contour.pintle.${key}`,
  part: { kinds: ['mode'], needed: false, example: 'mode open wake' },
  label,
  dimension: 'length',
  unit: UNIT.millimetre,
  digits: 4,
  meaning,
  equation,
  model: 'nozzle-expansion-deflection',
  ...INNER_CONTOUR,
}));
