import { type CatalogueEntry, SOURCE, UNIT } from './entry.ts';
import { TYPICAL_ERROR } from './typicalError.ts';

const ofBudget = {
  model: 'losses',
  typicalError: TYPICAL_ERROR.budget,
  limits:
    'Computed: flow not along the axis, friction. Published bands: slow chemistry, incomplete combustion. With nothing fitted to an engine, the sum predicts engines that dump nothing within 2 % (see the page).',
  place: 'engine',
} as const;

const impulse = { ...ofBudget, dimension: 'time', unit: UNIT.second, digits: 4 } as const;
const share = { ...ofBudget, dimension: 'ratio', unit: UNIT.percent, digits: 2 } as const;

const ofItem = {
  part: { kinds: ['item'], needed: true, example: 'item friction on the wall' },
} as const;

/** From the ideal to the delivered specific impulse. */
export const lossQuantities: readonly CatalogueEntry[] = [
  {
    ...impulse,
    name: 'losses.ideal',
    typicalError:
      'Within 0.8 % of a textbook table (Sutton & Biblarz table 5-5, 15 rows, from memory; docs/methods/gas-expansion.md).',
    aliases: ['idealImpulse'],
    label: 'ideal specific impulse in vacuum',
    meaning:
      'What the propellants would give in one-dimensional flow whose chemistry keeps up, nothing lost.',
    equation: 'I = C_F c*_ideal / g₀, shifting, parallel flow at the area ratio',
    source: SOURCE.sutton,
  },
  ...(
    [
      ['losses.items', 'loss', 'I_lost of one cause', 'one cause', ofItem],
      ['losses.sum', 'all losses', 'Σ I_lost', 'all causes together', {}],
    ] as const
  ).flatMap(([prefix, label, symbol, of, several]): readonly CatalogueEntry[] => [
    {
      ...impulse,
      ...several,
      name: `${prefix}.specificImpulse`,
      label,
      digits: 3,
      meaning: `Specific impulse in vacuum that goes to ${of}; below 0, a gain.`,
      equation: symbol,
      source: 'named beside each item',
    },
    {
      ...share,
      ...several,
      name: `${prefix}.share`,
      label: `${label} as a share`,
      meaning: `The same as a share of the ideal specific impulse, ${of}.`,
      equation: `(${symbol}) / I_ideal`,
      source: 'named beside each item',
    },
    {
      ...share,
      ...several,
      name: `${prefix}.low`,
      label: `${label}, at least`,
      meaning: `Lower end of the published or computed scatter, ${of}.`,
      equation: 'low end of the band',
      source: 'named beside each item',
    },
    {
      ...share,
      ...several,
      name: `${prefix}.high`,
      label: `${label}, at most`,
      meaning: `Upper end of the published or computed scatter, ${of}.`,
      equation: 'high end of the band',
      source: 'named beside each item',
    },
  ]),
  {
    ...impulse,
    name: 'losses.delivered',
    aliases: ['deliveredImpulse'],
    label: 'delivered specific impulse in vacuum',
    meaning: 'What is left of the ideal after all losses.',
    equation: 'I_delivered = I_ideal − Σ I_lost',
    source: SOURCE.sutton,
  },
  ...layerQuantities(),
];

function layerQuantities(): readonly CatalogueEntry[] {
  const layer = {
    source:
      'momentum integral (Th. von Kármán 1921) with the friction law of E. R. van Driest 1956; E. J. Hopkins, M. Inouye, AIAA J. 9(6), 1971',
    model: 'boundary-layer',
    typicalError: TYPICAL_ERROR.layer,
    limits:
      'Smooth wall, turbulent from the injector on, one supposed wall temperature. Friction on plates is met within 10 % (from memory); no measured nozzle layer was at hand.',
    place: 'engine',
  } as const;
  return [
    {
      ...layer,
      name: 'losses.layer.thrustLost',
      label: 'thrust that friction takes',
      dimension: 'force',
      unit: UNIT.kilonewton,
      unitForSmall: UNIT.newton,
      digits: 3,
      meaning: 'Momentum that the slowed gas on the wall lacks as it leaves.',
      equation: 'F = 2π r ρ u² θ cos α at the lip',
    },
    {
      ...layer,
      name: 'losses.layer.momentumThickness',
      label: 'momentum thickness at the lip',
      dimension: 'length',
      unit: UNIT.millimetre,
      digits: 2,
      meaning: 'Thickness of outer flow that holds the momentum missing in the layer.',
      equation: 'θ = ∫ (ρ u / ρ_e u_e) (1 − u/u_e) dy',
    },
    {
      ...layer,
      name: 'losses.layer.throatDisplacement',
      label: 'displacement at the throat',
      dimension: 'length',
      unit: UNIT.millimetre,
      digits: 2,
      meaning: 'How far the slowed gas pushes the flow off the wall; below 0 where the cold gas draws it in.',
      equation: 'δ* = ∫ (1 − ρ u / ρ_e u_e) dy',
    },
    {
      ...layer,
      name: 'losses.layer.discharge',
      label: 'discharge of the wall layer',
      dimension: 'ratio',
      unit: UNIT.one,
      digits: 4,
      meaning: 'Mass flow through the throat over that without slowed gas on the wall.',
      equation: 'C_D = 1 − 2 δ* / r_t',
    },
    {
      ...layer,
      name: 'losses.layer.heatFlow',
      label: 'heat that the wall takes',
      dimension: 'power',
      unit: UNIT.megawatt,
      unitForSmall: UNIT.kilowatt,
      digits: 2,
      meaning: 'From injector to lip, all of it together.',
      equation: 'Q = ∫ St ρ u (h_r − h_w) dA',
    },
    {
      ...layer,
      name: 'losses.layer.wallTemperature',
      typicalError: 'Supposed, not computed.',
      label: 'temperature of the wall, supposed',
      dimension: 'temperature',
      unit: UNIT.kelvin,
      digits: 3,
      meaning:
        'Of the wall on the gas side; not computed. A colder one takes more heat and feels a little more friction.',
      equation: 'T_w = 800 K, at most the chamber’s',
      source: 'common practice for a cooled metal wall, no source',
    },
  ];
}
