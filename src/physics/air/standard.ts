/**
 * Constants of the U.S. Standard Atmosphere, 1976 (NOAA-S/T 76-1562).
 * Older than today's values of the same constants on purpose: only these reproduce the printed tables.
 * All from memory; they close with the printed rows in the tests.
 */

/** R* [J/(mol K)], the standard's own molar gas constant. */
export const MOLAR_GAS_CONSTANT_1976 = 8.31432;
/** N_A [1/mol], the standard's own Avogadro constant. */
export const AVOGADRO_1976 = 6.022169e23;
/** M0 [kg/mol], mean molar mass of the air at sea level. */
export const SEA_LEVEL_MOLAR_MASS = 0.0289644;
/** g0 [m/s²], also the g0′ [m²/(s² m′)] that defines the geopotential metre. */
export const SEA_LEVEL_GRAVITY = 9.80665;
/** r0 [m], effective radius of the earth at the latitude where gravity is g0. */
export const EFFECTIVE_EARTH_RADIUS = 6_356_766;
/** p0 [Pa] at sea level. */
export const SEA_LEVEL_PRESSURE = 101_325;
/** Ratio of specific heats of air below 86 km [–]. */
export const HEAT_CAPACITY_RATIO = 1.4;

/** [m] geometric: lowest altitude of the printed tables. */
export const LOWEST_ALTITUDE = -5_000;
/** [m] geometric: up to here the air is well mixed and the closed form holds. */
export const MIXED_CEILING = 86_000;
/** [m] geometric: highest altitude of the printed tables. */
export const HIGHEST_ALTITUDE = 1_000_000;
