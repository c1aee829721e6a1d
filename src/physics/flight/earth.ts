/** Earth as a flight needs it. */

import type { Earth } from './model.ts';

/** Source: WGS 84, NIMA TR8350.2 (equatorial radius); IERS Conventions 2010, table 1.1 (GM). */
export const EARTH: Earth = { radius: 6_378_137, gravitationalParameter: 3.986004418e14 };
/** Angular velocity [rad/s]. Source: WGS 84, NIMA TR8350.2. */
export const EARTH_ROTATION = 7.292115e-5;

/** Speed [m/s] at the lowest point of an orbit: v² = μ (2/r_p − 2/(r_p + r_a)). Check: 185 km by 185 km → 7793 m/s. */
export function perigeeSpeed(
  perigeeAltitude: number,
  apogeeAltitude: number,
  { radius, gravitationalParameter }: Earth = EARTH,
): number {
  const perigee = radius + perigeeAltitude;
  const apogee = radius + apogeeAltitude;
  return Math.sqrt(gravitationalParameter * (2 / perigee - 2 / (perigee + apogee)));
}
