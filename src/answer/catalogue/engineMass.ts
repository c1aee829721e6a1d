/** What an engine weighs. */

import { ofCycle } from './cycleRow.ts';
import { type CatalogueEntry, UNIT } from './entry.ts';

const common = {
  ...ofCycle,
  place: 'engine',
  source:
    'D. L. Akin, University of Maryland, mass estimating relations; B. T. C. Zandbergen, EUCASS 2015 (both from memory)',
  typicalError:
    'Two published relations; public engines lie between 30 % below and 35 % above them, but for the lightest kerosene ones (docs/methods/cycle.md).',
  limits:
    'By thrust, area ratio and fuel alone: no chamber pressure, no cycle, no year. Pump-fed by a turbine, 10 kN to 10 MN.',
  digits: 2,
} as const;

export const engineMassQuantities: readonly CatalogueEntry[] = [
  {
    ...common,
    name: 'mass.engine',
    aliases: ['engineMass', 'dryMass'],
    label: 'dry mass of the engine',
    dimension: 'mass',
    unit: UNIT.kilogram,
    meaning: 'What an engine of this thrust usually weighs without propellant: an estimate with a wide band.',
    equation: '7.81·10⁻⁴ F + 3.37·10⁻⁵ F √ε + 59; 0.00514 F^0.92068 or 1.104·10⁻³ F + 27.7; geometric mean',
  },
  {
    ...common,
    name: 'mass.thrustToWeight',
    aliases: ['thrustToWeight'],
    label: 'thrust over the engine’s own weight',
    dimension: 'ratio',
    unit: UNIT.one,
    meaning: 'Thrust in vacuum over the weight of the dry engine at the ground.',
    equation: 'F/(m g₀)',
  },
];
