import { type CatalogueEntry, SOURCE, UNIT } from './entry.ts';
import { TYPICAL_ERROR } from './typicalError.ts';

/** What published figures need beside the quantities they are figures of. */
export const publishedQuantities: readonly CatalogueEntry[] = [
  areaOf(
    'throat.area',
    'throatArea',
    'throat area',
    'Area of the throat, across the axis.',
    'A_t = π D_t²/4',
  ),
  areaOf(
    'exit.area',
    'exitArea',
    'exit area',
    'Area of the exit at the lip, across the axis.',
    'A_e = ε A_t',
  ),
  {
    name: 'published.share',
    label: 'difference from the published figure in per cent',
    dimension: 'ratio',
    unit: UNIT.percent,
    digits: 2,
    meaning: 'How much more the models give than was published, as a share of what was published.',
    equation: 'δ = (computed − published)/published',
    source: 'difference of a computed and a published value',
    model: 'published-figures',
    typicalError: 'That of the published figure and of the model together.',
    limits:
      'Published thrust, specific impulse, flow and mixture ratio are held against the whole engine’s, turbine exhaust included, where the study states its cycle; else against those of its chamber alone.',
    place: 'engine',
    notAsked: {
      why: 'It belongs to one published row.',
      instead: 'Ask for the quantity that was published, and compare it with the published number.',
    },
  },
];

function areaOf(
  name: string,
  alias: string,
  label: string,
  meaning: string,
  equation: string,
): CatalogueEntry {
  return {
    name,
    aliases: [alias],
    label,
    meaning,
    equation,
    dimension: 'area',
    unit: UNIT.squareMetre,
    unitForSmall: UNIT.squareCentimetre,
    digits: 4,
    source: SOURCE.geometry,
    model: 'nozzle-size',
    typicalError: TYPICAL_ERROR.geometry,
    limits: 'Gas side; wall thickness is left out.',
    place: 'engine',
  };
}
