/**
 * Sine, cosine, arcsine and exponential of the small differences between neighbours: power series of as many terms as
 * double precision can tell from the whole for arguments up to 0.03 (first term left out below 2e-17).
 */

/** [rad], or in ln p */
const SMALL = 0.03;

export function isSmall(x: number): boolean {
  return x < SMALL && x > -SMALL;
}

export function smallSine(x: number): number {
  const q = x * x;
  return x * (1 - q * (1 / 6 - q * (1 / 120 - q * (1 / 5040))));
}

export function smallCosine(x: number): number {
  const q = x * x;
  return 1 - q * (1 / 2 - q * (1 / 24 - q * (1 / 720)));
}

export function smallArcSine(s: number): number {
  const q = s * s;
  return s * (1 + q * (1 / 6 + q * (3 / 40 + q * (5 / 112 + q * (35 / 1152)))));
}

export function smallExp(x: number): number {
  return (
    1 + x * (1 + x * (1 / 2 + x * (1 / 6 + x * (1 / 24 + x * (1 / 120 + x * (1 / 720 + x * (1 / 5040)))))))
  );
}
