/** What a study states of the cooling. */

import { coolingEntry } from './coolingRow.ts';
import { type CatalogueEntry, SOURCE, UNIT } from './entry.ts';
import type { Row } from './heat.ts';
import { TYPICAL_ERROR } from './typicalError.ts';

const { millimetre, one, percent } = UNIT;

const stated: readonly Row[] = [
  [
    'share',
    'share of the propellant that cools',
    'ratio',
    percent,
    3,
    'Of that propellant’s flow, through the channels.',
    'as stated',
  ],
  ['land', 'metal between two channels', 'length', millimetre, 3, 'At the throat.', 'as stated'],
  ['thickness', 'thickness of the wall', 'length', millimetre, 3, 'Between gas and coolant.', 'as stated'],
  [
    'film',
    'share of the fuel in the film',
    'ratio',
    percent,
    3,
    'Runs down the wall from the injector on.',
    'as stated',
  ],
  [
    'skirtFrom',
    'area ratio from which the wall only radiates',
    'ratio',
    one,
    3,
    'Behind it there are no channels.',
    'as stated',
  ],
];

export const coolingInputs: readonly CatalogueEntry[] = stated.map(
  (each): CatalogueEntry => ({
    ...coolingEntry(each),
    source: SOURCE.study,
    model: 'study-file',
    typicalError: TYPICAL_ERROR.stated,
    limits: 'As good as the number the study states.',
    place: 'input',
  }),
);
