/**
 * Value at t of the cubic from a (t = 0) to b (t = 1) with slopes da, db over the whole step (Hermite's form).
 *
 *   a + t [da + t (3d − 2da − db + t (da + db − 2d))],   d = b − a
 */
export function cubicBetween(a: number, da: number, b: number, db: number, t: number): number {
  const d = b - a;
  return a + t * (da + t * (3 * d - 2 * da - db + t * (da + db - 2 * d)));
}
