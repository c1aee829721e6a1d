/** The standard atmosphere as a flight meets it. */

import { airAtGeometricAltitude, HIGHEST_ALTITUDE } from '../air/index.ts';
import type { FlightAir } from './model.ts';

/** @param altitude [m] geometric; null above the standard's end */
export function standardAir(altitude: number): FlightAir | null {
  return altitude < HIGHEST_ALTITUDE ? airAtGeometricAltitude(altitude) : null;
}
