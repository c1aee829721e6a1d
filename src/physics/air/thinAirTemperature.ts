import { EFFECTIVE_EARTH_RADIUS } from './standard.ts';

/**
 * Kinetic temperature from 86 to 1000 km, in the standard's own kilometres.
 *
 *   86–91 km    T = 186.8673
 *   91–110 km   T = 263.1905 − 76.3232 √(1 − [(Z − 91)/19.9429]²)
 *   110–120 km  T = 240 + 12 (Z − 110)
 *   120–1000 km T = 1000 − 640 exp(−0.01875 ξ),  ξ = (Z − 120)(r0 + 120)/(r0 + Z)
 *
 * Source: U.S. Standard Atmosphere, 1976, section 1.2.5 (coefficients from memory; they close with the
 * printed rows and join without a step).
 */

const MESOPAUSE = 186.8673;
const ARC = { centre: 263.1905, height: 76.3232, from: 91, width: 19.9429 };
const RAMP = { from: 110, temperature: 240, slope: 12 };
const EXOSPHERE = { from: 120, temperature: 1000, deficit: 640, decay: 0.01875 };
const RADIUS_KM = EFFECTIVE_EARTH_RADIUS / 1000;

/** T [K] at Z [km], 86 ≤ Z ≤ 1000. */
export function temperatureInThinAir(zKm: number): number {
  if (zKm <= ARC.from) return MESOPAUSE;
  if (zKm <= RAMP.from) {
    const x = (zKm - ARC.from) / ARC.width;
    return ARC.centre - ARC.height * Math.sqrt(1 - x * x);
  }
  if (zKm <= EXOSPHERE.from) return RAMP.temperature + RAMP.slope * (zKm - RAMP.from);
  return EXOSPHERE.temperature - EXOSPHERE.deficit * Math.exp(-EXOSPHERE.decay * reducedHeight(zKm));
}

/** dT/dZ [K/km] at Z [km]. */
export function temperatureGradientInThinAir(zKm: number): number {
  if (zKm <= ARC.from) return 0;
  if (zKm <= RAMP.from) {
    const x = (zKm - ARC.from) / ARC.width;
    return (ARC.height * x) / (ARC.width * Math.sqrt(1 - x * x));
  }
  if (zKm <= EXOSPHERE.from) return RAMP.slope;
  const stretch = (RADIUS_KM + EXOSPHERE.from) / (RADIUS_KM + zKm);
  const { deficit, decay } = EXOSPHERE;
  return deficit * decay * stretch * stretch * Math.exp(-decay * reducedHeight(zKm));
}

function reducedHeight(zKm: number): number {
  return ((zKm - EXOSPHERE.from) * (RADIUS_KM + EXOSPHERE.from)) / (RADIUS_KM + zKm);
}
