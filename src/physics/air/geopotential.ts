import { EFFECTIVE_EARTH_RADIUS, SEA_LEVEL_GRAVITY } from './standard.ts';

/**
 * Geopotential altitude [m′] of a geometric altitude.
 *
 *   H = r0 Z / (r0 + Z)
 *
 * @param altitudeGeometric Z, height above mean sea level [m]
 * Source: U.S. Standard Atmosphere, 1976, section 1.2.
 * Check: Z = 86 000 m → H = 84 852 m′.
 */
export function geopotentialFromGeometric(altitudeGeometric: number): number {
  return (EFFECTIVE_EARTH_RADIUS * altitudeGeometric) / (EFFECTIVE_EARTH_RADIUS + altitudeGeometric);
}

/**
 * Geometric altitude [m] of a geopotential altitude: Z = r0 H / (r0 − H), the inverse of the above.
 *
 * @param altitudeGeopotential H [m′], below r0
 */
export function geometricFromGeopotential(altitudeGeopotential: number): number {
  return (EFFECTIVE_EARTH_RADIUS * altitudeGeopotential) / (EFFECTIVE_EARTH_RADIUS - altitudeGeopotential);
}

/**
 * Acceleration of gravity [m/s²] at a geometric altitude: g = g0 [r0 / (r0 + Z)]².
 *
 * @param altitudeGeometric Z [m]
 * Source: U.S. Standard Atmosphere, 1976, section 1.2 (rotation of the earth is in g0 and r0).
 */
export function gravityAt(altitudeGeometric: number): number {
  const ratio = EFFECTIVE_EARTH_RADIUS / (EFFECTIVE_EARTH_RADIUS + altitudeGeometric);
  return SEA_LEVEL_GRAVITY * ratio * ratio;
}
