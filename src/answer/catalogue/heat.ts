import { type CatalogueEntry, type Dimension, type DisplayUnit, SOURCE, UNIT } from './entry.ts';
import { TYPICAL_ERROR } from './typicalError.ts';

const BARTZ =
  'D. R. Bartz, Jet Propulsion 27(1), 1957, 49 (from memory); B. Leckner, Combustion and Flame 19, 1972 (radiation)';

const gasSide = {
  source: BARTZ,
  model: 'heat-gas-side',
  typicalError: TYPICAL_ERROR.bartz,
  limits:
    'Walls of one supposed temperature, clean and turbulent all along; no soot, no film, no unlike mixture at the wall. For comparison, not for building hardware.',
  place: 'engine',
} as const;

const layer = {
  ...gasSide,
  source:
    'momentum integral with heat by Colburn’s analogy: D. G. Elliott, D. R. Bartz, S. Silver, JPL TR 32-387, 1963 (from memory)',
  typicalError: TYPICAL_ERROR.layer,
} as const;

const exact = { ...gasSide, source: SOURCE.geometry, typicalError: TYPICAL_ERROR.geometry } as const;
const power = { dimension: 'power', unit: UNIT.megawatt, unitForSmall: UNIT.kilowatt, digits: 3 } as const;
const flux = {
  dimension: 'heatFlux',
  unit: UNIT.megawattPerSquareMetre,
  unitForSmall: UNIT.kilowattPerSquareMetre,
  digits: 3,
} as const;
const kelvin = { dimension: 'temperature', unit: UNIT.kelvin, digits: 4 } as const;
const millimetres = { dimension: 'length', unit: UNIT.millimetre, digits: 4 } as const;
const share = { dimension: 'ratio', unit: UNIT.percent, digits: 2 } as const;

/** Which of several walls. */
const ofWall = {
  place: 'wall',
  part: { kinds: ['surface'], needed: false, example: 'throat, surface outer wall' },
} as const;

/** Heat from the gas to the walls, whatever cools them. */
export const heatQuantities: readonly CatalogueEntry[] = [
  {
    ...gasSide,
    ...power,
    name: 'heat.total',
    label: 'heat to the walls',
    meaning: 'All heat that the gas gives to the walls, injector to lip, radiation included.',
    equation: 'Q = ∫ [h_g (T_aw − T_w) + q_rad] dA',
  },
  {
    ...layer,
    ...power,
    name: 'heat.layerTotal',
    label: 'heat to the walls by the integral layer',
    meaning: 'The same by the second model, the momentum integral along the wall.',
    equation: 'Q = ∫ [St ρ u (h_r − h_w) + q_rad] dA',
  },
  {
    ...gasSide,
    ...share,
    name: 'heat.radiationShare',
    label: 'share of radiation',
    meaning: 'Part of that heat that hot water vapour and carbon dioxide radiate.',
    equation: '∫ q_rad dA / Q',
    typicalError: 'Good to perhaps half of itself: gas hotter than the fitted range, no soot (no source).',
  },
  {
    ...gasSide,
    ...flux,
    name: 'heat.peakFlux',
    label: 'greatest heat flux',
    meaning: 'Heat per area and second where it is greatest, a little ahead of the throat.',
    equation: 'q = h_g (T_aw − T_w) + q_rad,  h_g = 0.026 (μ^0.2 c_p/Pr^0.6)₀ G^0.8 D^−0.2 (D⁎/r_c)^0.1 σ',
  },
  {
    ...layer,
    ...flux,
    name: 'heat.layerPeakFlux',
    label: 'greatest heat flux by the integral layer',
    meaning: 'The same by the second model.',
    equation: 'q = St ρ u (h_r − h_w) + q_rad',
  },
  {
    ...gasSide,
    ...millimetres,
    name: 'heat.peakAt',
    label: 'place of the greatest heat flux',
    meaning: 'Along the axis from the throat plane; negative upstream.',
    equation: 'x where q is greatest',
  },
  {
    ...exact,
    name: 'heat.wettedArea',
    label: 'wetted area of all walls',
    dimension: 'area',
    unit: UNIT.squareMetre,
    unitForSmall: UNIT.squareCentimetre,
    digits: 3,
    meaning:
      'Of every wall along which the gas runs, both sides of a ring counted; the injector’s face is not.',
    equation: 'A = ∫ b ds',
  },
  {
    ...exact,
    ...millimetres,
    name: 'heat.throatEdge',
    label: 'edge of the throat',
    meaning: 'Length of wall that touches the throat: once round a circle, twice round a ring.',
    equation: 'P_t = Σ b_t',
  },
  {
    ...exact,
    ...millimetres,
    name: 'heat.throatHydraulicDiameter',
    label: 'hydraulic diameter of the throat',
    meaning: 'Four times the area over the edge: the diameter of a circle, twice the gap of a ring.',
    equation: 'D = 4 A_t / P_t',
  },
  {
    ...gasSide,
    ...kelvin,
    name: 'heat.wallTemperature',
    digits: 3,
    label: 'wall temperature supposed for the heat',
    meaning: 'Of all walls on the gas side; the coolant’s march finds them place by place.',
    equation: 'T_w = 800 K, at most the chamber’s',
    source: 'common practice for a cooled metal wall, no source',
    typicalError: 'Supposed, not computed.',
  },
  ...(
    [
      ['area', 'throat area', 'A′/A − 1 = δ/g, round (1 + δ/D)² − 1'],
      ['flow', 'flow at the same chamber pressure', 'ṁ′/ṁ − 1 = A′/A − 1'],
      ['pressure', 'chamber pressure at the same flow', 'p′/p − 1 = A/A′ − 1'],
    ] as const
  ).map(
    ([key, of, equation]): CatalogueEntry => ({
      ...exact,
      ...share,
      name: `heat.gapError.${key}`,
      label: `change of the ${of} by a tenth of a millimetre`,
      meaning: `What a throat wider by 0.1 mm (gap of a ring, diameter of a circle) makes of the ${of}.`,
      equation,
    }),
  ),
  ...alongQuantities(),
];

function alongQuantities(): readonly CatalogueEntry[] {
  return [
    {
      ...gasSide,
      ...flux,
      ...ofWall,
      name: 'heat.flux',
      aliases: ['heatFlux'],
      label: 'heat flux',
      meaning: 'Heat per area and second from the gas to the wall at this place, by Bartz.',
      equation: 'q = h_g (T_aw − T_w) + q_rad',
    },
    {
      ...layer,
      ...flux,
      ...ofWall,
      name: 'heat.layerFlux',
      label: 'heat flux by the integral layer',
      meaning: 'The same by the second model.',
      equation: 'q = St ρ u (h_r − h_w) + q_rad',
    },
    {
      ...gasSide,
      ...flux,
      ...ofWall,
      name: 'heat.radiationFlux',
      label: 'heat flux by radiation',
      meaning: 'Part of it that hot water vapour and carbon dioxide radiate.',
      equation: 'q = ½ (1 + ε_w) ε_g σ (T⁴ − T_w⁴)',
      typicalError: 'Good to perhaps half of itself (no source).',
    },
    {
      ...gasSide,
      ...kelvin,
      ...ofWall,
      name: 'heat.adiabaticTemperature',
      label: 'temperature of a wall without cooling',
      meaning: 'What the slowed gas at the wall would make of it: nearly the chamber’s.',
      equation: 'T_aw = T + Pr^(1/3) (T₀ − T)',
    },
  ];
}

/** A plain number with its unit, for tables below. */
export type Row = readonly [
  name: string,
  label: string,
  dimension: Dimension,
  unit: DisplayUnit,
  digits: number,
  meaning: string,
  equation: string,
];
