/** Mach number behind over ahead of the oblique shock at which a turbulent boundary layer separates [–]. */
const MACH_RATIO = 0.762;

/**
 * Pressure ahead over behind the oblique shock that just separates a turbulent boundary layer, p_sep/p_a [–].
 *
 *   M₂ = 0.762 M        p₂/p = 1 + 2γ (X − 1)/(γ + 1),   X = M² sin²β
 *   M₂² [2γX − (γ−1)] [(γ−1)X + 2] = (γ+1)² M² X − 4 (X − 1)(γX + 1)
 *
 * The second line is a quadratic in X with one positive root. Below about M = 1.15 even the normal shock slows the gas
 * less than that; there it is the normal shock's, which goes to 1 at M = 1.
 *
 * @param mach M at the wall just upstream [–], ≥ 1
 * @param gamma γ [–], constant across the shock
 * Source: E. Reshotko, M. Tucker, NACA TN 3454, 1955 (the ratio); used for nozzles by M. Arens, E. Spiegler, AIAA J. 1(3),
 * 1963 (both from memory); oblique shock: NACA Report 1135, 1953.
 * Check: M = 3, γ = 1.4: X = 2.4727, p₂/p = 2.7182 → 0.3679; the shock of that X leads from Mach 3 to 2.286.
 */
export function separationPressureRatioShockMach(mach: number, gamma: number): number {
  const m1 = mach * mach;
  const m2 = MACH_RATIO ** 2 * m1;
  const g = gamma;
  const a = 2 * g * (g - 1) * m2 + 4 * g;
  const b = m2 * (4 * g - (g - 1) ** 2) - (g + 1) ** 2 * m1 + 4 * (1 - g);
  const c = -2 * (g - 1) * m2 - 4;
  const x = Math.min((-b + Math.sqrt(b * b - 4 * a * c)) / (2 * a), m1);
  return 1 / (1 + (2 * g * (Math.max(x, 1) - 1)) / (g + 1));
}
