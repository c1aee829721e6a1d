import { type CatalogueEntry, SOURCE, UNIT } from './entry.ts';
import { TYPICAL_ERROR } from './typicalError.ts';

const standardAir = {
  source: SOURCE.air,
  model: 'air',
  typicalError: TYPICAL_ERROR.standardAir,
  limits:
    'A model day at middle latitude. Real air near the ground differs by a few per cent, above 80 km by tens of per cent.',
  place: 'air',
} as const;

export const airQuantities: readonly CatalogueEntry[] = [
  {
    ...standardAir,
    name: 'air.pressure',
    label: 'air pressure',
    dimension: 'pressure',
    unit: UNIT.bar,
    unitForSmall: UNIT.pascal,
    digits: 4,
    meaning: 'Pressure of standard air at this height.',
    equation: 'dp = −ρ g dz with p = ρ R T / M',
  },
  {
    ...standardAir,
    name: 'air.temperature',
    label: 'air temperature',
    dimension: 'temperature',
    unit: UNIT.kelvin,
    digits: 4,
    meaning: 'Temperature of standard air at this height.',
    equation: 'T(H): straight lines in geopotential altitude to 86 km, fitted curves above',
  },
  {
    ...standardAir,
    name: 'air.density',
    label: 'air density',
    dimension: 'density',
    unit: UNIT.kilogramPerCubicMetre,
    digits: 4,
    meaning: 'Mass of a cubic metre of standard air at this height.',
    equation: 'ρ = p M / (R T)',
  },
  {
    ...standardAir,
    name: 'air.soundSpeed',
    label: 'speed of sound in the air',
    dimension: 'velocity',
    unit: UNIT.metrePerSecond,
    digits: 4,
    meaning: 'Speed of sound in standard air; has no value above 86 km.',
    equation: 'a = √(1.4 R T / M)',
  },
  {
    ...standardAir,
    name: 'air.gravity',
    typicalError:
      'Below 0.3 %: the turning Earth and its flattening are left out (common practice, no source).',
    label: 'gravity',
    dimension: 'acceleration',
    unit: UNIT.metrePerSecondSquared,
    digits: 4,
    meaning: 'Acceleration of a falling body at this height.',
    equation: 'g = g₀ (r₀ / (r₀ + z))²',
  },
  {
    ...standardAir,
    name: 'air.geopotentialAltitude',
    typicalError: TYPICAL_ERROR.geometry,
    label: 'geopotential altitude',
    dimension: 'length',
    unit: UNIT.kilometre,
    digits: 4,
    meaning: 'Height that counts gravity as constant; a little less than the geometric altitude.',
    equation: 'H = r₀ z / (r₀ + z)',
  },
];
