/**
 * Flow from a nozzle whose surroundings press harder than the choked throat, one-dimensional.
 *
 *   gas that has left the wall:  a jet from the bare throat, p = p_a there:  ṁ/ṁ* = (ρu)(p_a)/(ρu)_t,  C_F = ρu²(p_a)/p0
 *   gas that stays on the wall:  p = p_a at the lip.
 *     subsonic throughout:       ṁ/ṁ* = ε (ρu)(p_a)/(ρu)_t,  C_F = ε ρu²(p_a)/p0      while ṁ < ṁ*
 *     choked, a shock behind the throat:  ṁ = ṁ*,  C_F = γ p_a M_e² ε/p0,
 *                                M_e² (1 + (γ−1)/2 M_e²) = (2/(γ+1))^((γ+1)/(γ−1)) (p0/(p_a ε))²
 *
 * The widening part of a rocket nozzle is far too steep and short to keep subsonic gas on its wall (diffusers stall above some 7°
 * of half-angle, common practice), so the jet is the best value and the other the far end of the span.
 *
 * Source: isentropic flow, mass conservation at constant total enthalpy: NACA Report 1135, 1953. γ at the throat, held.
 * Check: γ = 1.4, p_a/p0 = 0.84302 (M = 0.5), bare throat: ṁ/ṁ* = 1/1.33984 = 0.74636.
 */

import type { Expansion } from '../../gas/flow.ts';

export interface DrivenFlow {
  /** ṁ over that of the choked throat [–] */ readonly massFlowShare: number;
  /** C_F [–] */ readonly coefficient: number;
}

/** The jet of a bare throat; `ambientPressure` between throat and chamber pressure. */
export function jetOfBareThroat(expansion: Expansion, ambientPressure: number): DrivenFlow {
  const { massFlux, velocity } = expansion.atPressure(ambientPressure);
  return {
    massFlowShare: massFlux / expansion.throat.massFlux,
    coefficient: (massFlux * velocity) / expansion.chamber.pressure,
  };
}

/** Gas that stays on the wall to a lip of area ratio ε. */
export function flowHeldByWall(expansion: Expansion, areaRatio: number, ambientPressure: number): DrivenFlow {
  const jet = jetOfBareThroat(expansion, ambientPressure);
  const share = areaRatio * jet.massFlowShare;
  if (share < 1) return { massFlowShare: share, coefficient: areaRatio * jet.coefficient };
  const { throat, chamber } = expansion;
  const g = throat.isentropicExponent ?? throat.gammaFrozen;
  const head = (2 / (g + 1)) ** ((g + 1) / (g - 1)) * (chamber.pressure / (ambientPressure * areaRatio)) ** 2;
  // M²(1 + k M²) = head, k = (γ−1)/2, in the form without cancellation.
  const mach2 = (2 * head) / (1 + Math.sqrt(1 + 2 * (g - 1) * head));
  return { massFlowShare: 1, coefficient: (g * ambientPressure * mach2 * areaRatio) / chamber.pressure };
}
