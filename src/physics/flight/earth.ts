/** Earth as a flight needs it. */

/** GM of the Earth [m³/s²]. Source: IERS Conventions 2010, table 1.1 (3.986004418e14). */
export const EARTH_GRAVITATIONAL_PARAMETER = 3.986004418e14;
/** Equatorial radius [m]. Source: WGS 84, NIMA TR8350.2. */
export const EARTH_RADIUS = 6_378_137;
/** Angular velocity [rad/s]. Source: WGS 84, NIMA TR8350.2. */
export const EARTH_ROTATION = 7.292115e-5;

/** Speed of a circular orbit at an altitude [m]: √(μ/r) [m/s]. Check: 185 km → 7793 m/s. */
export function circularSpeed(altitude: number): number {
  return Math.sqrt(EARTH_GRAVITATIONAL_PARAMETER / (EARTH_RADIUS + altitude));
}

/** Speed [m/s] at the lowest point of an orbit: v² = μ (2/r_p − 2/(r_p + r_a)). */
export function perigeeSpeed(perigeeAltitude: number, apogeeAltitude: number): number {
  const perigee = EARTH_RADIUS + perigeeAltitude;
  const apogee = EARTH_RADIUS + apogeeAltitude;
  return Math.sqrt(EARTH_GRAVITATIONAL_PARAMETER * (2 / perigee - 2 / (perigee + apogee)));
}
