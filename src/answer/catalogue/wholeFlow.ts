/** Numbers of a whole flow computed as a field: figures and their tables tell them. */

import { type CatalogueEntry, UNIT } from './entry.ts';

const field = {
  source: 'E. F. Toro, M. Spruce, W. Speares, Shock Waves 4, 1994, 25 (from memory)',
  model: 'flow-field',
  limits: 'No friction: no mixing with the air, and where gas leaves a wall is put in, not found.',
  typicalError:
    'Thrust within 0.2 % of characteristics where a round nozzle is full; of a plug’s gas, base aside, 0.2 to 0.3 % less with the normal mesh; of expansion–deflection nozzles for each kilogram 0.2 %, 0.5 % with an open wake at the pressure that it has in the field (mass flow 1.1 % less with a coarse mesh, 0.7 % with the normal one, more of one whose small pintle leaves no room for a gentle throat). Mach disks of sonic jets within 4.7 %.',
  place: 'altitude',
  notAsked: {
    why: 'It is of a whole flow, which is computed in seconds to minutes, not drawn over what is not known.',
    instead: 'Ask plumeline flow, or draw the figures of the whole flow.',
  },
} as const;

/** At a place of the field. */
const there = [
  ['pressure', 'pressure in the flow', 'pressure', UNIT.bar, 4, 'Pressure of the gas at this place.', 'p'],
  [
    'mach',
    'Mach number in the flow',
    'ratio',
    UNIT.one,
    3,
    'Speed of the gas over its own speed of sound.',
    'M = u / a',
  ],
  [
    'temperature',
    'temperature in the flow',
    'temperature',
    UNIT.kelvin,
    4,
    'Temperature of the gas at this place.',
    'T = p / (ρ R)',
  ],
  [
    'speed',
    'speed in the flow',
    'velocity',
    UNIT.metrePerSecond,
    4,
    'Speed of the gas at this place.',
    '|u| = √(u² + v²)',
  ],
] as const;

export const wholeFlowQuantities: readonly CatalogueEntry[] = [
  {
    ...field,
    name: 'wholeFlow.axial',
    label: 'distance from the throat along the axis',
    dimension: 'length',
    unit: UNIT.metre,
    unitForSmall: UNIT.millimetre,
    digits: 4,
    meaning: 'Along the axis from the throat plane, through the nozzle and the jet.',
    equation: 'x',
  },
  ...there.map(
    ([name, label, dimension, unit, digits, meaning, equation]): CatalogueEntry => ({
      ...field,
      name: `wholeFlow.${name}`,
      label,
      dimension,
      unit,
      digits,
      meaning,
      equation,
    }),
  ),
  ...(
    [
      [
        'shock',
        'distance of the jet’s shock',
        'How far behind the lip the first strong shock of the jet meets the axis.',
        'greatest d ln p / dx within its rise on the axis',
      ],
      [
        'cell',
        'length of the first shock cell in the field',
        'From the lip to where the axis pressure has swung once about that of the air; told where the law of cells holds, near the matched pressure.',
        'p(x) about p_a on the axis',
      ],
    ] as const
  ).map(
    ([name, label, meaning, equation]): CatalogueEntry => ({
      ...field,
      name: `wholeFlow.${name}`,
      label,
      dimension: 'length',
      unit: UNIT.metre,
      unitForSmall: UNIT.millimetre,
      digits: 2,
      meaning,
      equation,
    }),
  ),
  {
    ...field,
    name: 'wholeFlow.thrustCoefficient',
    label: 'thrust coefficient of the field',
    dimension: 'ratio',
    unit: UNIT.one,
    digits: 4,
    meaning: 'Push of the computed field on the engine over chamber pressure and throat area.',
    equation: 'C_F = F / (p₀ A_t)',
  },
  ...(
    [
      [
        'dischargeCoefficient',
        'gas that comes into the field',
        UNIT.one,
        'Gas that comes through the computed field over that of one-dimensional flow through the throat.',
        'ṁ / ṁ*',
      ],
      [
        'perMass',
        'thrust of the field for each kilogram, against the model',
        UNIT.percent,
        'By how much a kilogram of gas pushes more in the field than by the nozzle’s model, base and suction aside.',
        '(C_F − C_F,base)/ṁ over that of the model, less 1',
      ],
      [
        'base',
        'push on the base',
        UNIT.one,
        'Push of the gas on the base of a plug or a pintle over chamber pressure and throat area, the air’s pressure taken off.',
        'C_F,base = ∫ (p − p_a) dA / (p₀ A_t)',
      ],
      [
        'wake',
        'thrust by the open wake’s own pressure',
        UNIT.one,
        'By how much the thrust coefficient of the nozzle’s model changes, its base aside, with the open wake at the mean pressure that the field has along its edge instead of the air’s.',
        'C_F,model(p_wake) − C_F,model(p_a), base aside',
      ],
    ] as const
  ).map(
    ([name, label, unit, meaning, equation]): CatalogueEntry => ({
      ...field,
      name: `wholeFlow.${name}`,
      label,
      dimension: 'ratio',
      unit,
      digits: 3,
      meaning,
      equation,
    }),
  ),
  {
    ...field,
    name: 'wholeFlow.basePressure',
    label: 'pressure on the base in the field',
    dimension: 'pressure',
    unit: UNIT.bar,
    digits: 3,
    meaning: 'Mean pressure of the computed field on the base of a plug or a pintle.',
    equation: '∫ p dA / A_base',
    typicalError:
      'Held against published estimates only, which scatter by a factor of two; nothing mixes into a wake without friction.',
  },
  {
    ...field,
    name: 'wholeFlow.suction',
    label: 'suction that is not in the field',
    dimension: 'ratio',
    unit: UNIT.one,
    digits: 3,
    meaning:
      'Thrust coefficient that the nozzle’s model takes off because still air beside the jet is sucked at; the field has it at the air’s pressure.',
    equation: '∫ (p − p_a) dA / (p₀ A_t) over the walls beside the jet',
    source:
      'R. Stark, AIAA 2013-3840; S. Kalt, D. Badal, J. Spacecraft & Rockets 2(3), 1965; of nozzles of two modes G. Hagemann, H. Immich, T. V. Nguyen, G. E. Dumnov, JPP 14(5), 1998 (all from memory)',
    model: 'nozzle-separation',
    limits:
      'Behind the place where the gas leaves the wall up to twice the area there (ours, no source); of nozzles of two modes one published figure for all, about 3 % of the thrust.',
    typicalError: 'The pressure beside the jet is published as 0.95 to 1 of the air’s; 0.975 is taken.',
  },
];
