import { type CatalogueEntry, SOURCE, UNIT } from './entry.ts';
import { TYPICAL_ERROR } from './typicalError.ts';

const part = {
  source: SOURCE.sutton,
  model: 'nozzle-thrust',
  typicalError: TYPICAL_ERROR.surfaces,
  limits:
    'Gas side, before friction and slow chemistry: what they take is in the loss budget, and the thrust is less by it.',
  place: 'altitude',
} as const;

const ofSurface = {
  ...part,
  part: { kinds: ['surface'], needed: true, example: 'vacuum, surface nozzle wall' },
} as const;

const closure = {
  typicalError: TYPICAL_ERROR.closure,
  dimension: 'ratio',
  source: 'balance of the computed field',
  model: 'flow-characteristics',
  place: 'engine',
} as const;

/** Where the push acts, and how well the field closes. */
export const thrustPartQuantities: readonly CatalogueEntry[] = [
  {
    ...ofSurface,
    name: 'thrustParts.force',
    label: 'push on one surface',
    dimension: 'force',
    unit: UNIT.kilonewton,
    unitForSmall: UNIT.newton,
    digits: 4,
    meaning: 'Pressure of the gas on this surface less that of the air outside, forwards.',
    equation: 'F_i = ∫ (p − p_a) dA_x',
  },
  {
    ...ofSurface,
    name: 'thrustParts.coefficient',
    label: 'share of one surface in the thrust coefficient',
    dimension: 'ratio',
    unit: UNIT.one,
    digits: 4,
    meaning: 'The push on this surface over chamber pressure times throat area.',
    equation: 'C_F,i = F_i / (p₀ A_t)',
  },
  {
    ...part,
    name: 'thrustParts.sum',
    label: 'thrust by surfaces',
    dimension: 'force',
    unit: UNIT.kilonewton,
    unitForSmall: UNIT.newton,
    digits: 4,
    meaning: 'All surfaces together.',
    equation: 'F = Σ F_i',
  },
  {
    ...part,
    name: 'thrustParts.boundary',
    label: 'thrust by the exit',
    dimension: 'force',
    unit: UNIT.kilonewton,
    unitForSmall: UNIT.newton,
    digits: 4,
    meaning: 'The same thrust from what leaves: momentum and pressure across the exit.',
    equation: 'F = ∫_exit [ρu (q·dA) + (p − p_a) dA_x]',
  },
  {
    ...part,
    name: 'thrustParts.difference',
    typicalError: TYPICAL_ERROR.closure,
    label: 'difference of the two ways to the thrust',
    dimension: 'ratio',
    unit: UNIT.percent,
    digits: 2,
    meaning: 'Thrust by surfaces over thrust by the exit, less one.',
    equation: 'Σ F_i / F_exit − 1',
    limits: 'Within 0.3 %, or the answer says why not.',
  },
  {
    ...closure,
    name: 'field.mass',
    label: 'mass balance of the flow field',
    unit: UNIT.percent,
    digits: 2,
    meaning: 'Mass flow out over mass flow in, less one.',
    equation: 'ṁ_out / ṁ_in − 1',
    limits: 'Within 0.05 %.',
  },
  {
    ...closure,
    name: 'field.massPutRight',
    label: 'mass flow put right along the field',
    unit: UNIT.percent,
    digits: 2,
    meaning: 'What the lines of the net missed of the mass flow, put right line by line.',
    equation: 'Σ (ṁ_line / ṁ_in − 1)',
    limits: 'Mostly below 0.3 %; a strong internal shock costs more.',
  },
  {
    ...closure,
    name: 'field.momentum',
    label: 'momentum balance of the flow field',
    unit: UNIT.percent,
    digits: 2,
    meaning: 'Thrust by surfaces from the throat on over thrust by the exit, less one, in vacuum.',
    equation: 'F_surfaces / F_exit − 1',
    limits: 'Mostly below 0.1 %.',
  },
  {
    ...closure,
    name: 'field.energy',
    label: 'energy balance of the flow field',
    unit: UNIT.percent,
    digits: 2,
    meaning: 'Largest departure of the total enthalpy across the exit, over the kinetic energy there.',
    equation: 'max |h + q²/2 − h₀| / (q²/2)',
    limits: 'That of the gas table, below 0.001 %.',
  },
  {
    ...closure,
    name: 'field.nodes',
    typicalError: TYPICAL_ERROR.count,
    label: 'nodes of the flow field',
    unit: UNIT.one,
    digits: 5,
    meaning: 'Points at which the flow is computed.',
    equation: '–',
    limits: '–',
  },
];
