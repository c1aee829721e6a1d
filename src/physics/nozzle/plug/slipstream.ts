/** Ambient pressure that a plug feels behind a vehicle in flight. */
export interface FeltAmbient {
  /** [Pa] value taken: the middle of the band */ readonly pressure: number;
  /** [Pa] as behind a body with no jet */ readonly low: number;
  /** [Pa] as at rest */ readonly high: number;
}

/** Ratio of specific heats of air [–]. */
const GAMMA_AIR = 1.4;
/** Share of the air's pressure that is left behind a body at the least [–]: 70 % of a vacuum, from memory. */
const LEAST_SHARE = 0.3;

/**
 * The slipstream lowers the air's pressure round the lip. Published are base pressures of bodies without a jet, the most that
 * it could be; a jet fills part of the wake.
 *
 *   lowest   p_a (1 − ½ γ M² C),   C = 0.12 + 0.13 M² below Mach 1, 0.25/M above,   not below 0.3 p_a
 *   highest  p_a
 *
 * Source: E. L. Fleeman, Tactical Missile Design, AIAA, 2001 (base drag while coasting; from memory). That the slipstream
 * lowers what plug and open-wake base feel near Mach 1 is the subject of R. A. Wasko, NASA TN D-4462, 1968 (title page read).
 *
 * @param mach of the vehicle [–]; 0 at rest, where nothing is changed
 */
export function feltAmbient(ambientPressure: number, mach: number): FeltAmbient {
  const drag = mach < 1 ? 0.12 + 0.13 * mach * mach : 0.25 / mach;
  const share = Math.max(1 - 0.5 * GAMMA_AIR * mach * mach * drag, LEAST_SHARE);
  const low = ambientPressure * share;
  return { pressure: 0.5 * (low + ambientPressure), low, high: ambientPressure };
}

/**
 * Mach number on the way up [–]: M = √(z/z₁), steady acceleration from rest at the ground in air of one sound speed.
 *
 * @param altitude z [m] @param machOne z₁ [m] where M = 1
 */
export function machOnTheWayUp(altitude: number, machOne: number): number {
  return Math.sqrt(Math.max(altitude, 0) / machOne);
}
