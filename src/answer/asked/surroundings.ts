import { airAtGeometricAltitude, geometricAltitudeAtPressure } from '../../physics/air/index.ts';
import type { AskedAmbient } from './model.ts';

/** Pressure of the surroundings, and the altitude that they were asked by. */
export interface Surroundings {
  /** [Pa] */ readonly pressure: number;
  /** [m] geometric; null for a pressure without one */ readonly altitude: number | null;
}

/** @throws ProblemError for an altitude outside the standard air */
export function surroundingsOf(ambient: AskedAmbient): Surroundings {
  switch (ambient.kind) {
    case 'vacuum':
      return { pressure: 0, altitude: null };
    case 'altitude':
      return {
        pressure: airAtGeometricAltitude(ambient.altitude).pressure,
        altitude: ambient.altitude,
      };
    case 'pressure':
      return { pressure: ambient.pressure, altitude: null };
  }
}

/** Geometric altitude [m] of asked surroundings. @throws ProblemError where no standard air has that pressure */
export function altitudeOf(ambient: AskedAmbient): number {
  return ambient.kind === 'altitude'
    ? ambient.altitude
    : geometricAltitudeAtPressure(ambient.kind === 'vacuum' ? 0 : ambient.pressure);
}
