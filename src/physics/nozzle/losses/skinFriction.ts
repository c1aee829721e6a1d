/**
 * Friction coefficient of an incompressible turbulent layer over momentum thickness [–].
 *
 *   c_f = 1 / (17.08 L² + 25.11 L + 6.012),   L = log₁₀ Re_θ
 *
 * @param reynolds Re_θ = ρ u θ/μ [–]; the correlation rests on 10³ … 10⁵, below 200 its value there is kept
 * Source: the Kármán–Schoenherr law in local form, as used by E. J. Hopkins, M. Inouye, AIAA J. 9(6), 1971, 993 (from memory).
 * Check: Re_θ = 10⁴ → 0.0026334.
 */
export function frictionIncompressible(reynolds: number): number {
  const log = Math.log10(Math.max(reynolds, LOWEST_REYNOLDS));
  return 1 / (17.08 * log * log + 25.11 * log + 6.012);
}

/** Re_θ at which the layer is supposed to start, turbulent; thinner ones are laminar (common practice, no source). */
export const LOWEST_REYNOLDS = 200;

/**
 * Friction coefficient of a compressible turbulent layer with heat transfer, van Driest's second method [–].
 *
 *   c_f = c_f,i(Re_θ μ_e/μ_w) / F_c
 *
 * @param reynolds Re_θ by the outer flow's density, velocity and viscosity
 * @param viscosityRatio μ_e/μ_w [–]
 * @param densityWeight F_c [–]
 * Source: E. R. van Driest, Aeronaut. Eng. Rev. 15, 1956, 26; Hopkins & Inouye, as above: within 10 % of measured friction
 * for walls at 0.3 to 1 of the recovery temperature (from memory).
 */
export function frictionCompressible(
  reynolds: number,
  viscosityRatio: number,
  densityWeight: number,
): number {
  return frictionIncompressible(reynolds * viscosityRatio) / densityWeight;
}
