/**
 * Flow through the throat of a round nozzle with a circular-arc throat, as a series in 1/(1 + R), R = wall radius of
 * curvature over throat radius, upstream of the throat.
 *
 * Source: I. M. Hall, Quart. J. Mech. Appl. Math. 15 (1962), 487, first and second order, axisymmetric; re-expanded in
 * ε = 1/(1 + R) after J. R. Kliegel & J. N. Levine, AIAA J. 7(7), 1969, 1375, which keeps the series usable for small R.
 * Coefficients from memory; closed by the tests: irrotationality, flow tangent to the wall, and the published discharge
 * coefficient of the same order.
 *
 *   u/a* = 1 + ε u₁ + ε² (u₁ + u₂ − z/2)
 *   v/a* = √((γ+1) ε/2) · [ ε v₁ + ε² (3/2 v₁ + v₂ − z r/2) ],      z = x √(2/((γ+1) ε))
 *   u₁ = r²/2 − 1/4 + z,      v₁ = r³/4 − r/4 + z r
 *   u₂ = (2γ+9)/24 r⁴ − (4γ+15)/24 r² + (10γ+57)/288 + z (r² − 5/8) − (2γ−3)/6 z²
 *   v₂ = (γ+3)/9 r⁵ − (20γ+63)/96 r³ + (28γ+93)/288 r + z ((2γ+9)/6 r³ − (4γ+15)/12 r) + z² r
 *
 * x, r in throat radii, x from the throat plane; γ the isentropic exponent at the throat.
 * Assumes the throat is a circular arc upstream and the flow irrotational. Error: third order in ε.
 */

export interface ThroatVelocity {
  /** axial velocity over the critical speed [–] */ readonly u: number;
  /** radial velocity over the critical speed [–] */ readonly v: number;
}

/** Velocity at (x, r) [throat radii] for a throat curvature radius R [throat radii]. */
export function throatVelocity(x: number, r: number, curvatureRadius: number, gamma: number): ThroatVelocity {
  const e = 1 / (1 + curvatureRadius);
  const z = x * Math.sqrt(2 / ((gamma + 1) * e));
  const r2 = r * r;
  const u1 = r2 / 2 - 0.25 + z;
  const v1 = r * (r2 / 4 - 0.25 + z);
  const u2 =
    ((2 * gamma + 9) / 24) * r2 * r2 -
    ((4 * gamma + 15) / 24) * r2 +
    (10 * gamma + 57) / 288 +
    z * (r2 - 0.625) -
    ((2 * gamma - 3) / 6) * z * z;
  const v2 =
    r *
    (((gamma + 3) / 9) * r2 * r2 -
      ((20 * gamma + 63) / 96) * r2 +
      (28 * gamma + 93) / 288 +
      z * (((2 * gamma + 9) / 6) * r2 - (4 * gamma + 15) / 12) +
      z * z);
  return {
    u: 1 + e * u1 + e * e * (u1 + u2 - z / 2),
    v: Math.sqrt(((gamma + 1) * e) / 2) * (e * v1 + e * e * (1.5 * v1 + v2 - (z * r) / 2)),
  };
}

/**
 * Discharge coefficient of the throat: mass flow over the one-dimensional one [–], to the second order of the series.
 *
 *   C_D = 1 − (γ+1) ε² [ 1/96 − (8γ − 27) ε / 2304 ]
 *
 * Source: Kliegel & Levine 1969 (first two terms; from memory).
 */
export function dischargeCoefficient(curvatureRadius: number, gamma: number): number {
  const e = 1 / (1 + curvatureRadius);
  return 1 - (gamma + 1) * e * e * (1 / 96 - ((8 * gamma - 27) * e) / 2304);
}
