/**
 * Where the Mach disk of an under-expanded jet stands: two published correlations of measurements.
 *
 *   sonic orifice     x_M/D = 0.67 √(p₀/p_a)            15 < p₀/p_a < 17 000
 *                     H. Ashkenas & F. S. Sherman, Rarefied Gas Dynamics IV, vol. 2, 1966, 84 (constant from memory; the
 *                     square root confirmed by an entropy balance, Phys. Fluids 18, 1975, 1421)
 *   nozzle exit       x_M/D_e = 0.69 M_e √(γ p_e/p_a)   C. H. Lewis & D. J. Carlson, AIAA J. 2(4), 1964, 776 (from memory)
 *
 * The nozzle's range of pressures was not at hand; above the orifice's there is no measurement behind either.
 * x_M from the exit plane, D the exit's diameter, γ the isentropic exponent at the exit. Neither hangs on γ otherwise.
 * Check: p₀/p_a = 50 → 4.738; M_e = 3, γ = 1.4, p_e/p_a = 2 → 3.464.
 */

import { ProblemError } from '../../numerics/problem.ts';

/** p₀/p_a of the measurements behind the orifice law. */
export const ORIFICE_RANGE = { low: 15, high: 17_000 };

/**
 * p_e/p_a below which the disk has shrunk to nothing: p₀/p_a = 3.9 at a sonic orifice of γ = 1.4, by the law for its diameter
 * D_M/D = 0.36 √(p₀/p_a − 3.9) of A. L. Addy, AIAA J. 19(1), 1981, 121 (from memory). Taken over for supersonic exits.
 */
export const DISK_ONSET = 3.9 * 0.52828;

/** x_M/D of a sonic orifice [–]. @throws ProblemError outside the measured pressure ratios */
export function machDiskOfOrifice(stagnationOverAmbient: number): number {
  const { low, high } = ORIFICE_RANGE;
  if (stagnationOverAmbient > low && stagnationOverAmbient < high)
    return 0.67 * Math.sqrt(stagnationOverAmbient);
  throw new ProblemError({
    code: 'mach-disk-outside-range',
    what: `The Mach disk of a sonic orifice was measured for pressure ratios of ${low} to ${high}, not ${stagnationOverAmbient.toPrecision(4)}.`,
    why: 'below there is no disk on the axis, above the jet is too thin for a shock',
    mend: 'Ask at another ambient pressure.',
    facts: { stagnationOverAmbient, low, high },
  });
}

/**
 * x_M/D_e of a nozzle [–].
 * @throws ProblemError for a jet that is not under-expanded, or a Mach number below 1
 */
export function machDiskOfNozzle(exitMach: number, gamma: number, exitOverAmbient: number): number {
  if (exitMach >= 1 && gamma > 1 && exitOverAmbient > 1) {
    return 0.69 * exitMach * Math.sqrt(gamma * exitOverAmbient);
  }
  throw new ProblemError({
    code: 'mach-disk-outside-range',
    what: `The law for the Mach disk behind a nozzle holds for under-expanded supersonic jets, not for Mach ${exitMach.toPrecision(4)} with p_e/p_a = ${exitOverAmbient.toPrecision(4)}.`,
    mend: 'Ask at an ambient pressure below that of the exit.',
    facts: { exitMach, gamma, exitOverAmbient },
  });
}
