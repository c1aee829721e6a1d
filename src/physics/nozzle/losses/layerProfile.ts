/**
 * Across the layer: velocity by the one-seventh power law, enthalpy by Crocco and Busemann,
 *
 *   u/u_e = z = (y/δ)^{1/7}
 *   h     = h_w + (h_r − h_w) z − r u_e²/2 z²,   h_r = h_e + r u_e²/2,   r = Pr^{1/3}
 *
 * and density from it at constant pressure. Three integrals over z follow: the shape of the layer and van Driest's
 * weight of the density on friction,
 *
 *   δ* / δ = ∫ (1 − (ρ/ρ_e) z) 7 z⁶ dz,   θ/δ = ∫ (ρ/ρ_e) z (1 − z) 7 z⁶ dz,   F_c = [ ∫ (ρ/ρ_e)^½ dz ]⁻²
 *
 * Sources: E. R. van Driest, J. Aeronaut. Sci. 18, 1951, 145, and Aeronaut. Eng. Rev. 15, 1956, 26; D. G. Elliott,
 * D. R. Bartz, S. Silver, JPL Technical Report 32-387, 1963 (one-seventh profiles in nozzles); all from memory.
 */

import type { LayerEdge, LayerGas } from './layerGas.ts';

export interface LayerProfile {
  /** H = δ* / θ [–]; below 0 for walls so cold that the layer is denser than it is slow */ readonly shape: number;
  /** F_c [–] */ readonly densityWeight: number;
  /** h_r [J/kg] */ readonly recoveryEnthalpy: number;
}

// Eight-point Gauss–Legendre rule on [0, 1] (Abramowitz & Stegun, table 25.4).
const POINTS = [
  0.019855071751232, 0.101666761293187, 0.237233795041836, 0.408282678752175, 0.591717321247825,
  0.762766204958164, 0.898333238706813, 0.980144928248768,
];
const WEIGHTS = [
  0.050614268145188, 0.111190517226687, 0.156853322938944, 0.181341891689181, 0.181341891689181,
  0.156853322938944, 0.111190517226687, 0.050614268145188,
];

export function layerProfile(edge: LayerEdge, gas: LayerGas): LayerProfile {
  const { enthalpy, wallEnthalpy, velocity, temperature, wallTemperature } = edge;
  const heating = (Math.cbrt(edge.prandtl) * velocity * velocity) / 2;
  const recoveryEnthalpy = enthalpy + heating;
  const coldSlope = (temperature - wallTemperature) / (enthalpy - wallEnthalpy);
  let displacement = 0;
  let momentum = 0;
  let root = 0;
  for (let i = 0; i < POINTS.length; i++) {
    const z = POINTS[i]!;
    const h = wallEnthalpy + (recoveryEnthalpy - wallEnthalpy) * z - heating * z * z;
    const warmth = h > enthalpy ? gas.warmth(h, edge) : 1 + (coldSlope * (h - enthalpy)) / temperature;
    const density = 1 / warmth;
    const weight = WEIGHTS[i]! * 7 * z ** 6;
    displacement += weight * (1 - density * z);
    momentum += weight * density * z * (1 - z);
    root += WEIGHTS[i]! * Math.sqrt(density);
  }
  return { shape: displacement / momentum, densityWeight: 1 / (root * root), recoveryEnthalpy };
}
