/** Cooling at each place of the wall. */

import { coolingEntry } from './coolingRow.ts';
import { type CatalogueEntry, UNIT } from './entry.ts';
import type { Row } from './heat.ts';

const { kelvin, bar, metrePerSecond, one } = UNIT;

const ofWall = {
  place: 'wall',
  part: { kinds: ['surface'], needed: false, example: 'throat, surface outer wall' },
} as const;

const along: readonly Row[] = [
  [
    'wallHot',
    'wall temperature, gas side',
    'temperature',
    kelvin,
    3,
    'Of the face that the gas touches.',
    'q = h_g (T_aw − T_wg) + q_rad',
  ],
  [
    'wallCold',
    'wall temperature, coolant side',
    'temperature',
    kelvin,
    3,
    'Of the face that the coolant touches.',
    'q = (k/t)(T_wg − T_wc)',
  ],
  [
    'coolantTemperature',
    'coolant temperature',
    'temperature',
    kelvin,
    3,
    'Mean over the channel.',
    'ṁ dh = q b ds',
  ],
  [
    'coolantPressure',
    'coolant pressure',
    'pressure',
    bar,
    3,
    'In the channel.',
    '−dp = (f/D)(ρv²/2) ds + G dv',
  ],
  [
    'coolantVelocity',
    'coolant speed',
    'velocity',
    metrePerSecond,
    3,
    'Mean over the channel.',
    'v = ṁ_c/(ρ A)',
  ],
  [
    'flux',
    'heat flux into the cooled wall',
    'heatFlux',
    UNIT.megawattPerSquareMetre,
    3,
    'At the wall temperature that the march finds.',
    'q = h_eff (T_wc − T_c)',
  ],
  [
    'localMargin',
    'wall margin at a place',
    'ratio',
    one,
    2,
    'Heat that can pass with neither face hotter than it may be, over what then arrives.',
    'q_pass/q_arrive',
  ],
];

export const coolingAlong: readonly CatalogueEntry[] = along.map((each) => ({
  ...coolingEntry(each),
  ...ofWall,
}));
