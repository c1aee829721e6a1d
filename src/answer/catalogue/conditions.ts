import { type CatalogueEntry, SOURCE, UNIT } from './entry.ts';
import { TYPICAL_ERROR } from './typicalError.ts';

const thrustFigures = [
  {
    key: 'thrust',
    label: 'thrust',
    dimension: 'force',
    unit: UNIT.kilonewton,
    unitForSmall: UNIT.newton,
    digits: 4,
    meaning: 'Push of the engine: best value of its model, where the model has one.',
    equation: 'F = C_F p₀ A_t',
    typicalError: TYPICAL_ERROR.vacuumThrust,
    limits:
      'With the losses of the budget taken off (losses: none leaves them out); seven public engines that dump nothing are met within 2 % in vacuum but for one. Where the gas has left the wall: the attached part plus the dead air behind it, with a span over the published criteria.',
  },
  {
    key: 'thrustIfFull',
    label: 'thrust if the gas fills the nozzle',
    dimension: 'force',
    unit: UNIT.kilonewton,
    unitForSmall: UNIT.newton,
    digits: 4,
    meaning: 'Push the engine would have if the gas stayed on the wall whatever the air outside.',
    equation: 'F = λ ṁ_ideal u_e + (p_e − p_a) A_e',
    typicalError: TYPICAL_ERROR.fullThrust,
    limits: 'Where the flow separates, no real engine has this thrust.',
  },
  {
    key: 'thrustCoefficient',
    label: 'thrust coefficient',
    dimension: 'ratio',
    unit: UNIT.one,
    digits: 4,
    meaning: 'How many times the push of the bare throat (pressure times area) the nozzle makes of it.',
    equation: 'C_F = C_D λ (ρu)_t u_e / p₀ + ε (p_e − p_a)/p₀ − ΔC_F',
    typicalError: TYPICAL_ERROR.vacuumThrust,
    limits: 'As for the thrust.',
  },
  {
    key: 'specificImpulse',
    label: 'specific impulse',
    dimension: 'time',
    unit: UNIT.second,
    digits: 4,
    meaning: 'Seconds for which a kilogram of propellant holds up its own weight at the ground.',
    equation: 'I_sp = F / (ṁ g₀) = C_F c* / (C_D g₀)',
    typicalError: TYPICAL_ERROR.vacuumThrust,
    limits:
      'Of the thrust chamber, losses taken off as in the budget; public engines that dump nothing are met within 2 % but for one. Engines that dump their turbine gas deliver 2 to 4 % less than their chamber (from memory).',
  },
] as const;

function figuresAt(prefix: string, where: string, place: 'engine' | 'altitude'): readonly CatalogueEntry[] {
  return thrustFigures.map(({ key, label, ...rest }) => ({
    ...rest,
    name: `${prefix}${key}`,
    label: `${label}${where}`,
    source: SOURCE.sutton,
    model: 'nozzle-thrust',
    place,
  }));
}

export const vacuumAndSeaLevelQuantities: readonly CatalogueEntry[] = [
  ...figuresAt('vacuum.', ' in vacuum', 'engine'),
  ...figuresAt('seaLevel.', ' at sea level', 'engine'),
];

const inMode = { kinds: ['mode'], needed: false, example: '12 km, mode skirt drawn up' } as const;

/** One value for each condition of the air. */
export const conditionQuantities: readonly CatalogueEntry[] = [
  ...figuresAt('', '', 'altitude').map((entry) => ({ ...entry, part: inMode })),
  {
    name: 'altitude',
    label: 'altitude',
    dimension: 'length',
    unit: UNIT.kilometre,
    digits: 4,
    meaning: 'Height above sea level, geometric (as a tape would measure it).',
    equation: 'z',
    source: SOURCE.air,
    model: 'air',
    typicalError: TYPICAL_ERROR.stated,
    limits: 'Standard air, −5 to 1000 km.',
    place: 'altitude',
  },
  {
    name: 'ambientPressure',
    label: 'outside pressure',
    dimension: 'pressure',
    unit: UNIT.bar,
    unitForSmall: UNIT.pascal,
    digits: 4,
    meaning: 'Pressure of whatever the engine works in, absolute.',
    equation: 'p_a = p_air(z), or as stated',
    source: SOURCE.air,
    model: 'air',
    typicalError: TYPICAL_ERROR.standardAir,
    limits: 'Standard air: a real day differs by a few per cent near the ground and more above 80 km.',
    place: 'altitude',
  },
  {
    name: 'exitPressure',
    part: inMode,
    label: 'pressure at the lip here',
    dimension: 'pressure',
    unit: UNIT.bar,
    unitForSmall: UNIT.pascal,
    digits: 3,
    meaning: 'Mean pressure of the gas as it leaves, at this outside pressure, if it fills the nozzle.',
    equation: 'p_e at ε; for the adapting bound p_e = p_a up to its area ratio',
    source: SOURCE.sutton,
    model: 'nozzle-thrust',
    typicalError: TYPICAL_ERROR.gasAtLip,
    limits: 'Mean over the exit.',
    place: 'altitude',
  },
  {
    name: 'flow.lipPressure',
    part: inMode,
    aliases: ['lipPressure'],
    label: 'pressure on the wall at the lip',
    dimension: 'pressure',
    unit: UNIT.bar,
    unitForSmall: UNIT.pascal,
    digits: 3,
    meaning: 'The pressure set against the limit at which gas leaves the wall.',
    equation: 'wall pressure of the flow field by characteristics; p_e for the ideal nozzle',
    source: SOURCE.sutton,
    model: 'nozzle-separation',
    typicalError: TYPICAL_ERROR.nozzleWall,
    limits:
      'Cone and bell: within some percent of a finer net; where no field can be had the mean stands in, and the criterion says so.',
    place: 'altitude',
  },
  {
    name: 'flow.separationPressure',
    part: inMode,
    aliases: ['separationPressure'],
    label: 'pressure at which the gas lets go of the wall',
    dimension: 'pressure',
    unit: UNIT.bar,
    unitForSmall: UNIT.pascal,
    digits: 3,
    meaning: 'Below this pressure on the wall, the air outside pushes the gas off it.',
    equation: 'p_sep = p_a (1.88 M − 1)^−0.64',
    source: SOURCE.separation,
    model: 'nozzle-separation',
    typicalError: TYPICAL_ERROR.criteria,
    limits: 'Published criteria differ from each other by 15 to 20 %.',
    place: 'altitude',
  },
];
