/**
 * Sine, cosine and arcsine of the small turns between neighbouring flow directions: series of as many terms as double
 * precision can tell from the whole up to SMALL_TURN (first term left out below 2e-17).
 */

/** [rad] */
export const SMALL_TURN = 0.03;

export function smallSine(x: number): number {
  const q = x * x;
  return x * (1 - (q / 6) * (1 - (q / 20) * (1 - q / 42)));
}

export function smallCosine(x: number): number {
  const q = x * x;
  return 1 - 0.5 * q * (1 - (q / 12) * (1 - q / 30));
}

export function smallArcSine(s: number): number {
  const q = s * s;
  return s * (1 + q * (1 / 6 + q * (3 / 40 + q * (5 / 112 + q * (35 / 1152)))));
}
