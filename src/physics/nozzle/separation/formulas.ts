/** The published formulas for the wall pressure at which gas leaves a nozzle's wall, over ambient pressure: p_sep/p_a [–]. */

/**
 * Ratio of the wall pressure at which turbulent flow leaves the wall to ambient pressure, p_sep/p_a [–].
 *
 *   p_sep/p_a = (1.88 M − 1)^−0.64
 *
 * Below M = 1.064 the fit would exceed 1; there it is 1, since no flow leaves a wall whose pressure is ambient or more.
 *
 * @param mach M, Mach number at the wall just upstream [–], ≥ 1
 * Source: R. Schmucker, TU Munich TB-7, -10, -14, 1973 (translation NASA TM-77396, 1984); formula from memory.
 * Limits: free separation, turbulent boundary layer; other published criteria differ by 15–20 %.
 * Check: M = 3 → 0.3745.
 */
export function separationPressureRatioSchmucker(mach: number): number {
  return mach <= SCHMUCKER_UNITY ? 1 : (1.88 * mach - 1) ** -0.64;
}
/** Where the fit gives exactly 1: 1.88 M − 1 = 1. */
const SCHMUCKER_UNITY = 2 / 1.88;

/**
 * p_sep/p_a = π/(3M) [–], at most 1.
 *
 * @param mach M at the wall just upstream [–], ≥ 1
 * Source: R. Stark, "Flow Separation in Rocket Nozzles – An Overview", AIAA 2013-3840; formula from memory.
 * Limits: turbulent, M 2.5 to 4.5.
 * Check: M = 3 → 0.3491.
 */
export function separationPressureRatioStark(mach: number): number {
  return Math.min(Math.PI / (3 * mach), 1);
}

/**
 * p_sep/p_a = 1/(1 + M/2) [–]: the plateau behind the separation, p_p/p = 1 + M/2, taken as ambient.
 *
 * @param mach M at the wall just upstream [–], ≥ 1
 * Source: E. E. Zukoski, AIAA J. 5, 1967; formula from memory.
 * Limits: measured ahead of steps and on flat walls, where the pressure upstream doesn't fall; turbulent.
 * Check: M = 3 → 0.4.
 */
export function separationPressureRatioZukoski(mach: number): number {
  return 1 / (1 + mach / 2);
}

/**
 * p_sep/p_a = 0.4 [–], whatever the Mach number.
 * Source: M. Summerfield, C. Foster, W. Swan, Jet Propulsion 24(9), 1954, 319–321 (0.35 to 0.40; its upper end).
 */
export const SEPARATION_PRESSURE_RATIO_SUMMERFIELD = 0.4;

/** p_sep/p_a = k (p_c/p_a)^−m: a power of the nozzle's pressure ratio. */
export interface PowerLaw {
  readonly factor: number;
  readonly exponent: number;
}

/**
 * p_sep/p_a = (2/3) (p_c/p_a)^−0.2.
 * Source: S. Kalt, D. Badal, J. Spacecraft & Rockets 2(3), 1965; formula from memory. Check: p_c/p_a = 100 → 0.2654.
 */
export const KALT_BADAL: PowerLaw = { factor: 2 / 3, exponent: 0.2 };

/**
 * p_sep/p_c = 0.583 (p_a/p_c)^1.195, contoured nozzles.
 * Source: Schilling, 1962; formula from memory. Check: p_c/p_a = 100 → 0.2375.
 */
export const SCHILLING_CONTOURED: PowerLaw = { factor: 0.583, exponent: 0.195 };

/** p_sep/p_c = 0.541 (p_a/p_c)^1.136, cones. Source: Schilling, 1962; formula from memory. */
export const SCHILLING_CONE: PowerLaw = { factor: 0.541, exponent: 0.136 };

/**
 * p_sep/p_a of a power law [–], at most 1.
 *
 * @param pressureRatio p_c/p_a [–]
 */
export function separationPressureRatioPower({ factor, exponent }: PowerLaw, pressureRatio: number): number {
  return Math.min(factor * pressureRatio ** -exponent, 1);
}

/**
 * Ambient pressure [Pa] at which a power law lets the gas go at a wall pressure: p_a = (p p_c^m / k)^(1/(1+m)).
 *
 * @param pressure p on the wall [Pa]
 * @param chamberPressure p_c [Pa]
 */
export function limitAmbientPower(law: PowerLaw, pressure: number, chamberPressure: number): number {
  return ((pressure * chamberPressure ** law.exponent) / law.factor) ** (1 / (1 + law.exponent));
}
