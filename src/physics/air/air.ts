import { ProblemError } from '../../numerics/problem.ts';
import { geometricFromGeopotential, geopotentialFromGeometric, gravityAt } from './geopotential.ts';
import {
  geopotentialAtPressureInMixedAir,
  molarMassRatioInMixedAir,
  molecularScaleTemperatureInMixedAir,
  pressureInMixedAir,
} from './mixedAir.ts';
import {
  HEAT_CAPACITY_RATIO,
  HIGHEST_ALTITUDE,
  LOWEST_ALTITUDE,
  MIXED_CEILING,
  MOLAR_GAS_CONSTANT_1976,
  SEA_LEVEL_MOLAR_MASS,
} from './standard.ts';
import { densityInThinAir, pressureInThinAir } from './thinAir.ts';
import { temperatureInThinAir } from './thinAirTemperature.ts';

/** The air of the U.S. Standard Atmosphere, 1976, at one altitude. SI units. */
export interface Air {
  /** [m] above mean sea level */ readonly altitudeGeometric: number;
  /** [m′] */ readonly altitudeGeopotential: number;
  /** Kinetic temperature T [K] */ readonly temperature: number;
  /** Molecular-scale temperature T_M = T M0/M [K] */ readonly temperatureMolecularScale: number;
  /** [Pa] */ readonly pressure: number;
  /** [kg/m³] */ readonly density: number;
  /** [m/s]; null above 86 km, where the standard defines none */ readonly soundSpeed: number | null;
  /** [m/s²] */ readonly gravity: number;
  /** [kg/mol] */ readonly molarMass: number;
}

/**
 * The standard air at a geometric altitude.
 *
 * @param altitudeGeometric Z, height above mean sea level [m], −5 000 … 1 000 000
 * @throws ProblemError `altitude-outside-air` outside that range
 * Assumes: mid-latitude mean of day, year and solar cycle; dry air; real days differ by several per cent in
 * pressure below 30 km and by factors in density above 200 km.
 * Source: U.S. Standard Atmosphere, 1976 (NOAA-S/T 76-1562).
 * Check: Z = 11 019 m → 216.65 K, 22 632 Pa.
 */
export function airAtGeometricAltitude(altitudeGeometric: number): Air {
  refuseOutside(altitudeGeometric);
  return altitudeGeometric <= MIXED_CEILING
    ? mixedAir(altitudeGeometric, geopotentialFromGeometric(altitudeGeometric))
    : thinAir(altitudeGeometric);
}

/** The same at a geopotential altitude H [m′]: Z = r0 H/(r0 − H). */
export function airAtGeopotentialAltitude(altitudeGeopotential: number): Air {
  const altitudeGeometric = geometricFromGeopotential(altitudeGeopotential);
  refuseOutside(altitudeGeometric);
  return altitudeGeometric <= MIXED_CEILING
    ? mixedAir(altitudeGeometric, altitudeGeopotential)
    : thinAir(altitudeGeometric);
}

function mixedAir(altitudeGeometric: number, altitudeGeopotential: number): Air {
  const temperatureMolecularScale = molecularScaleTemperatureInMixedAir(altitudeGeopotential);
  const pressure = pressureInMixedAir(altitudeGeopotential);
  const ratio = molarMassRatioInMixedAir(altitudeGeometric);
  const specific = (MOLAR_GAS_CONSTANT_1976 / SEA_LEVEL_MOLAR_MASS) * temperatureMolecularScale;
  return {
    altitudeGeometric,
    altitudeGeopotential,
    temperature: temperatureMolecularScale * ratio,
    temperatureMolecularScale,
    pressure,
    density: pressure / specific,
    soundSpeed: Math.sqrt(HEAT_CAPACITY_RATIO * specific),
    gravity: gravityAt(altitudeGeometric),
    molarMass: SEA_LEVEL_MOLAR_MASS * ratio,
  };
}

function thinAir(altitudeGeometric: number): Air {
  const temperature = temperatureInThinAir(altitudeGeometric / 1000);
  const pressure = pressureInThinAir(altitudeGeometric);
  const density = densityInThinAir(altitudeGeometric);
  const molarMass = (density * MOLAR_GAS_CONSTANT_1976 * temperature) / pressure;
  return {
    altitudeGeometric,
    altitudeGeopotential: geopotentialFromGeometric(altitudeGeometric),
    temperature,
    temperatureMolecularScale: (temperature * SEA_LEVEL_MOLAR_MASS) / molarMass,
    pressure,
    density,
    soundSpeed: null,
    gravity: gravityAt(altitudeGeometric),
    molarMass,
  };
}

/**
 * Geometric altitude [m] at which the standard air has a pressure: the inverse of the above.
 *
 * @param pressure p [Pa], from that at −5 km (177 762 Pa) to that at 1000 km (7.51·10⁻⁹ Pa)
 * @throws ProblemError `pressure-outside-air` outside that range
 */
export function geometricAltitudeAtPressure(pressure: number): number {
  const highest = pressureInMixedAir(geopotentialFromGeometric(LOWEST_ALTITUDE));
  const ceiling = pressureInMixedAir(geopotentialFromGeometric(MIXED_CEILING));
  // Decided first: the table of the thin air takes some 50 ms to make and is not needed down here.
  if (pressure > ceiling && pressure <= highest) {
    return geometricFromGeopotential(geopotentialAtPressureInMixedAir(pressure));
  }
  const lowest = pressureInThinAir(HIGHEST_ALTITUDE);
  if (!(pressure >= lowest && pressure <= highest)) throw outsidePressure(pressure, lowest, highest);
  return thinAirAltitudeAt(pressure);
}

/** Bisection to the last bit that matters: 60 halvings of 914 km. */
function thinAirAltitudeAt(pressure: number): number {
  let low = MIXED_CEILING;
  let high = HIGHEST_ALTITUDE;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (pressureInThinAir(middle) > pressure) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

function refuseOutside(altitudeGeometric: number): void {
  if (altitudeGeometric >= LOWEST_ALTITUDE && altitudeGeometric <= HIGHEST_ALTITUDE) return;
  throw new ProblemError({
    code: 'altitude-outside-air',
    what: `The altitude ${altitudeGeometric / 1000} km lies outside the standard air, −5 to 1000 km.`,
    why: 'The U.S. Standard Atmosphere, 1976, is tabulated for that range only.',
    mend: 'Choose an altitude between −5 and 1000 km, or state the ambient pressure itself (0 Pa for vacuum).',
    facts: { altitudeGeometric, lowest: LOWEST_ALTITUDE, highest: HIGHEST_ALTITUDE },
  });
}

function outsidePressure(pressure: number, lowest: number, highest: number): ProblemError {
  return new ProblemError({
    code: 'pressure-outside-air',
    what: `No altitude of the standard air has the pressure ${pressure} Pa.`,
    why: `Between −5 and 1000 km it falls from ${highest.toFixed(0)} Pa to ${lowest.toExponential(2)} Pa.`,
    mend: 'Use the pressure itself as the ambient condition instead of an altitude.',
    facts: { pressure, lowest, highest },
  });
}
