/**
 * The fully expanded jet, and the length of the first shock cell of a jet that is nearly matched.
 *
 *   D_j/D_t = √(A/A*(M_j)),   M_j: Mach number at p = p_a on the isentrope of the chamber
 *   L₁ = (π/j₀₁) D_j √(M_j² − 1),   j₀₁ = 2.404826 the first zero of J₀:   L₁ = 1.3063 D_j √(M_j² − 1)
 *
 * A standing wave of small amplitude in a uniform jet inside a vortex sheet.
 * Source: L. Prandtl, Phys. Z. 5, 1904, 599; D. C. Pack, Quart. J. Mech. Appl. Math. 3, 1950, 173 (from memory; the
 * constant is exact).
 * Range: M_j above 1, mean pressure at the exit within a factor of three of the ambient's (common practice, no source). Real
 * first cells are 10 to 20 % shorter, and shrink downstream (from memory). Check: M_j = 2 → L₁/D_j = 2.2627.
 */

import { ProblemError } from '../../numerics/problem.ts';
import type { Expansion } from '../gas/flow.ts';
import type { FullyExpanded } from './model.ts';

/** First zero of the Bessel function J₀ (Abramowitz & Stegun, table 9.5). */
export const FIRST_ZERO_OF_J0 = 2.404825557695773;

/** p_e/p_a up to which, either way, the linear wave is told: beyond it is an extrapolation; common practice, no source. */
export const NEARLY_MATCHED = 3;

/** L₁/D_j [–] at the fully expanded Mach number. @throws ProblemError for M_j ≤ 1: no cells */
export function cellLengthOverDiameter(fullyExpandedMach: number): number {
  if (fullyExpandedMach > 1) {
    return (Math.PI / FIRST_ZERO_OF_J0) * Math.sqrt(fullyExpandedMach * fullyExpandedMach - 1);
  }
  throw new ProblemError({
    code: 'no-shock-cells',
    what: `A jet of Mach ${fullyExpandedMach.toPrecision(4)} when fully expanded has no shock cells.`,
    why: 'shock cells are standing waves of a supersonic jet',
    mend: 'Ask at an ambient pressure below that of the throat.',
    facts: { fullyExpandedMach },
  });
}

/**
 * M_j and D_j over the throat diameter of the gas at ambient pressure p_a [Pa].
 * @throws ProblemError where p_a is not below the throat's pressure, not below what the gas data reach, or has no Mach number
 */
export function fullyExpandedJet(expansion: Expansion, ambientPressure: number): FullyExpanded {
  if (!(ambientPressure < expansion.throat.pressure)) {
    throw new ProblemError({
      code: 'jet-not-supersonic',
      what: 'At this ambient pressure the jet is not supersonic.',
      mend: 'Ask at an ambient pressure below that of the throat.',
      facts: { ambientPressure, throatPressure: expansion.throat.pressure },
    });
  }
  const { mach, areaRatio, absent } = expansion.atPressure(ambientPressure);
  if (mach !== null) return { mach, diameter: Math.sqrt(areaRatio) };
  throw new ProblemError({
    code: 'no-sound-speed',
    what: 'At the ambient pressure the gas has no single sound speed, so no Mach number.',
    ...(absent !== null && { why: absent }),
    mend: 'Use chemistry: frozen, or ask at another ambient pressure.',
    facts: { ambientPressure },
  });
}
