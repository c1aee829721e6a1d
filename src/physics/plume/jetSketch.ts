/**
 * How the jet goes on behind what is computed: a drawing, not a result. It leaves the last computed point in its direction
 * and comes back to the radius of the lip at the end of the first cell, so that the eye sees how long a cell is.
 *
 *   r(x) between the last point (x₀, r₀, slope m) and the end (L, r_lip): a cubic with slope m at x₀ and, at L, the slope
 *   with which the cell began, mirrored.
 */

import type { JetPoint } from './model.ts';

/** How many points a sketch has. */
const POINTS = 24;
/** Radii of the lip over which a jet without a cell length is drawn on. */
const STRAIGHT = 6;

/**
 * @param from last computed point, x from the lip
 * @param angle direction of the boundary there [rad]
 * @param lipRadius [–]
 * @param cellLength from the lip [–]; null: none is known, the boundary goes straight on
 */
export function sketchJet(
  from: JetPoint,
  angle: number,
  lipRadius: number,
  cellLength: number | null,
): readonly JetPoint[] {
  const end = cellLength === null ? from.axial : cellLength;
  // Too near the end of the cell, or backwards round the lip: a straight line says all that is known.
  if (end - from.axial < 0.15 * lipRadius || Math.abs(angle) > 1.2) return straight(from, angle, lipRadius);
  const length = end - from.axial;
  const slope = Math.tan(angle);
  const back = -slope;
  return Array.from({ length: POINTS + 1 }, (_, i) => {
    const t = i / POINTS;
    const a = (1 + 2 * t) * (1 - t) ** 2;
    const b = t * (1 - t) ** 2;
    const c = t * t * (3 - 2 * t);
    const d = -t * t * (1 - t);
    return {
      axial: from.axial + t * length,
      radius: Math.max(
        a * from.radius + b * length * slope + c * lipRadius + d * length * back,
        0.2 * lipRadius,
      ),
    };
  });
}

function straight(from: JetPoint, angle: number, lipRadius: number): readonly JetPoint[] {
  const length = STRAIGHT * lipRadius;
  return [
    from,
    { axial: from.axial + length * Math.cos(angle), radius: from.radius + length * Math.sin(angle) },
  ];
}
