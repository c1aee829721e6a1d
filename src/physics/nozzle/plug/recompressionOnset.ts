import type { Recompression } from './geometry.ts';

/**
 * Pressure rise at which a turbulent boundary layer begins to let go of a wall [–].
 *
 *   p₂/p₁ = 1 + M/2                 (E. E. Zukoski, AIAA J. 5, 1967: plateau pressure; from memory)
 *   never below 1.89                (T. J. Nussdorfer, NACA RM E51L26, 1954: onset near Mach 1.33; abstract read)
 */
export function separationOnset(mach: number): number {
  return Math.max(1 + mach / 2, NUSSDORFER);
}
const NUSSDORFER = 1.89;

/** The recompression nearest to its onset, by rise over onset; null where there is none. */
export function strongestAgainstOnset(
  recompressions: readonly Recompression[],
): (Recompression & { /** rise less 1 over the onset's less 1 [–] */ readonly share: number }) | null {
  let worst: (Recompression & { share: number }) | null = null;
  for (const one of recompressions) {
    const share = (one.pressureRatio - 1) / (separationOnset(one.mach) - 1);
    if (worst === null || share > worst.share) worst = { ...one, share };
  }
  return worst;
}
