/** Drag of a slender vehicle over its Mach number. */

import { cubicBetween } from '../../numerics/cubicBetween.ts';
import type { DragModel } from './model.ts';

/**
 * Coefficient of nose, skin and waves on the largest cross-section, no angle of attack, base left out. Shape of the published
 * curves of slender rockets: G. P. Sutton, O. Biblarz, Rocket Propulsion Elements, 7th ed., fig. 4-3 (from memory, read to
 * ± 0.03; the base taken out by the formula below).
 */
export const SLENDER_BODY: readonly { readonly mach: number; readonly coefficient: number }[] = [
  { mach: 0, coefficient: 0.16 },
  { mach: 0.6, coefficient: 0.16 },
  { mach: 0.8, coefficient: 0.18 },
  { mach: 0.95, coefficient: 0.26 },
  { mach: 1.1, coefficient: 0.36 },
  { mach: 1.25, coefficient: 0.37 },
  { mach: 1.5, coefficient: 0.33 },
  { mach: 2, coefficient: 0.26 },
  { mach: 3, coefficient: 0.19 },
  { mach: 4, coefficient: 0.16 },
  { mach: 6, coefficient: 0.13 },
  { mach: 10, coefficient: 0.11 },
];

/**
 * Suction on a base that no jet fills, on its own area:
 *
 *   C = 0.12 + 0.13 M² below Mach 1,   C = 0.25/M above
 *
 * Source: E. L. Fleeman, Tactical Missile Design, AIAA 2001, after S. F. Hoerner, Fluid-Dynamic Drag, 1965 (from memory).
 */
export function baseDragCoefficient(mach: number): number {
  return mach < 1 ? 0.12 + 0.13 * mach * mach : 0.25 / mach;
}

/** The drag of {@link SLENDER_BODY}, times a factor, and of the free base. */
export function slenderDrag(factor = 1): DragModel {
  return { body: (mach) => factor * bodyDragCoefficient(mach), base: baseDragCoefficient };
}

/** Between the points of the table a cubic with the mean of the neighbouring slopes; beyond its end its last value. */
export function bodyDragCoefficient(mach: number): number {
  const last = SLENDER_BODY.length - 1;
  if (mach >= SLENDER_BODY[last]!.mach) return SLENDER_BODY[last]!.coefficient;
  let i = 0;
  while (mach >= SLENDER_BODY[i + 1]!.mach) i += 1;
  const from = SLENDER_BODY[i]!;
  const to = SLENDER_BODY[i + 1]!;
  const width = to.mach - from.mach;
  return cubicBetween(
    from.coefficient,
    width * SLOPES[i]!,
    to.coefficient,
    width * SLOPES[i + 1]!,
    (mach - from.mach) / width,
  );
}

/** Harmonic mean of the slopes on both sides, none at a turn: no overshoot (F. N. Fritsch, R. E. Carlson 1980, from memory). */
function slopeAt(i: number): number {
  if (i === 0 || i === SLENDER_BODY.length - 1) return 0;
  const [before, at, after] = [SLENDER_BODY[i - 1]!, SLENDER_BODY[i]!, SLENDER_BODY[i + 1]!];
  const left = (at.coefficient - before.coefficient) / (at.mach - before.mach);
  const right = (after.coefficient - at.coefficient) / (after.mach - at.mach);
  return left * right <= 0 ? 0 : (2 * left * right) / (left + right);
}

const SLOPES = SLENDER_BODY.map((_, i) => slopeAt(i));
