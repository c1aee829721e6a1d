/** Functions that the closed forms of a flight with drag need. Checked against printed tables where they are used. */

/** Exponential integral E₁(x) = ∫ₓ^∞ e⁻ᵗ/t dt by its series, for 0 < x ≤ 5: M. Abramowitz, I. Stegun, 5.1.11. */
export function exponentialIntegral(x: number): number {
  const euler = 0.5772156649015329;
  let sum = 0;
  for (let n = 1, term = 1; n < 80; n++) {
    term *= -x / n;
    sum -= term / n;
  }
  return -euler - Math.log(x) + sum;
}

/** Γ(ν + 1) J_ν(z) and its derivative by the series in z², no sign of a pole: Abramowitz, Stegun, 9.1.10. */
export function besselSeries(
  order: number,
  z: number,
): { readonly value: number; readonly derivative: number } {
  const half = z / 2;
  let term = half ** order;
  let value = term;
  let derivative = (term * order) / z;
  for (let k = 1; k < 80; k++) {
    term *= -(half * half) / (k * (order + k));
    value += term;
    derivative += (term * (order + 2 * k)) / z;
  }
  return { value, derivative };
}
