/**
 * Heat transfer from the gas to the wall of a nozzle by Bartz.
 *
 *   h_g = (0.026/D⁎^0.2) (μ^0.2 c_p/Pr^0.6)₀ (p₀/c*)^0.8 (D⁎/r_c)^0.1 (A⁎/A)^0.9 σ
 *   σ   = [ ½ (T_w/T₀) (1 + (γ−1)M²/2) + ½ ]^−0.68 (1 + (γ−1)M²/2)^−0.12
 *
 * Written with the local mass flux G = ρu and the local hydraulic diameter D, which is the same for a round duct,
 * since (A⁎/A)^0.9/D⁎^0.2 (p₀/c*)^0.8 = G^0.8/D^0.2:
 *
 *   h_g = 0.026 (μ^0.2 c_p/Pr^0.6)₀ G^0.8 D^−0.2 (D⁎/r_c)^0.1 σ,     1 + (γ−1)M²/2 = T₀/T
 *
 * so that it holds for rings and for gas that reacts on its way. Subscript 0: at the temperature of the chamber, with the
 * chamber's composition, c_p with the composition held.
 *
 * Source: D. R. Bartz, Jet Propulsion 27(1), 1957, 49–51 (from memory; closes with the sample of NASA SP-125).
 */

/** Properties of the gas at stagnation, and its temperature there. */
export interface StagnationGas {
  /** μ₀ [Pa s] */ readonly viscosity: number;
  /** c_p0 [J/(kg K)], composition held */ readonly heatCapacity: number;
  /** Pr₀ [–] */ readonly prandtl: number;
  /** T₀ [K] */ readonly temperature: number;
}

/**
 * Published scatter: constants measured along a chamber, over Bartz's 0.026: 0.57 at the throat to 0.99 in the cylinder, each to
 * ±16 to 32 %; four other nozzles 0.65 to 0.88 at the throat. In large and mild engines ±20 to 30 % (common statement, from memory).
 */
export const BARTZ_SCATTER = {
  low: 0.55,
  high: 1.2,
  source:
    'Bartz’s equation against measurements: constants of 0.0148 (throat) to 0.0257 (cylinder) in place of 0.026, R. L. Schacht, R. J. Quentmeyer, W. L. Jones, NASA TN D-2832, 1965 (table read at second hand); ±20 to 30 % (common statement, from memory): taken as −45 to +20 %',
} as const;

/**
 * h_g/σ [W/(m² K)].
 * @param massFlux G [kg/(m² s)] @param diameter D [m] hydraulic @param curvature D⁎/r_c [–]
 */
export function bartzUncorrected(
  { viscosity, heatCapacity, prandtl }: StagnationGas,
  massFlux: number,
  diameter: number,
  curvature: number,
): number {
  const gas = (viscosity ** 0.2 * heatCapacity) / prandtl ** 0.6;
  return 0.026 * gas * massFlux ** 0.8 * diameter ** -0.2 * curvature ** 0.1;
}

/**
 * σ [–]: properties across the layer. @param wall T_w/T₀ @param cooling T₀/T, ≥ 1
 * Check: throat at γ = 1.2 (T₀/T = 1.1), T_w/T₀ = 0.5 → 1.1757.
 */
export function bartzSigma(wall: number, cooling: number): number {
  return (0.5 * wall * cooling + 0.5) ** -0.68 * cooling ** -0.12;
}

/**
 * Temperature that a wall without cooling would take [K].
 *
 *   T_aw = T + r (T₀ − T),   r = Pr^(1/3), turbulent
 */
export function adiabaticWallTemperature(temperature: number, stagnation: number, prandtl: number): number {
  return temperature + Math.cbrt(prandtl) * (stagnation - temperature);
}
