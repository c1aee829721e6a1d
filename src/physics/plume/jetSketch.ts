/**
 * How the jet goes on behind what is computed: a drawing, not a result. It leaves the last computed point in its direction
 * and comes back to the radius of the lip at the end of the first cell, so that the eye sees how long a cell is.
 *
 *   r(x) between the last point (x₀, r₀, slope m) and the end (L, r_lip): a cubic with slope m at x₀ and, at L, the slope
 *   with which the cell began, mirrored.
 *
 * A jet round a plug has no cells by any law: it is drawn on to the radius that it would have fully expanded, where that is
 * not far; any other goes straight on.
 */

import type { JetPoint } from './model.ts';

/** How many points a sketch has. */
const POINTS = 24;
/** Radii of the lip over which a jet without a cell length is drawn on. */
const STRAIGHT = 6;
/** [rad] direction beyond which a curve back would only mislead. */
const STEEPEST = 1.2;
/** Fully expanded radius over the last one, above which it is too far off to draw. */
const FARTHEST = 1.5;
/** Share of the lip radius below which no edge is drawn. */
const LEAST = 0.2;

export interface SketchFrom {
  /** Last computed point, x from the lip. */ readonly last: JetPoint;
  /** [rad] direction of the edge there */ readonly angle: number;
  /** [–] */ readonly lipRadius: number;
}

/** Back to the lip's radius at the end of the first cell [–] from the lip. */
export function sketchCell(from: SketchFrom, cellLength: number): readonly JetPoint[] {
  const { last, angle, lipRadius } = from;
  // Too near the end of the cell, or backwards round the lip: a straight line says all that is known.
  if (cellLength - last.axial < 0.15 * lipRadius || Math.abs(angle) > STEEPEST) return sketchStraight(from);
  return cubic(from, { axial: cellLength, radius: lipRadius }, -Math.tan(angle));
}

/** To the fully expanded radius [–] of a jet that leaves round a plug. */
export function sketchToRadius(from: SketchFrom, radius: number): readonly JetPoint[] {
  const { last, angle, lipRadius } = from;
  if (radius > FARTHEST * last.radius || Math.abs(angle) > STEEPEST) return sketchStraight(from);
  const length = 2 * lipRadius + 3 * Math.abs(radius - last.radius);
  const end = { axial: last.axial + length, radius };
  return [...cubic(from, end, 0), { axial: end.axial + STRAIGHT * lipRadius, radius }];
}

/** Straight on, but never to the axis, where other things happen. */
export function sketchStraight({ last, angle, lipRadius }: SketchFrom): readonly JetPoint[] {
  const room = (last.radius - LEAST * lipRadius) / Math.max(-Math.sin(angle), 1e-9);
  const backwards = Math.sin(angle) < 0 && Math.cos(angle) < 0;
  const length = backwards
    ? 0
    : Math.max(0, Math.min(STRAIGHT * lipRadius, angle < 0 ? room : Number.POSITIVE_INFINITY));
  const end = {
    axial: last.axial + length * Math.cos(angle),
    radius: last.radius + length * Math.sin(angle),
  };
  return [last, end];
}

function cubic({ last, angle, lipRadius }: SketchFrom, end: JetPoint, back: number): readonly JetPoint[] {
  const length = end.axial - last.axial;
  const slope = Math.tan(angle);
  return Array.from({ length: POINTS + 1 }, (_, i) => {
    const t = i / POINTS;
    const a = (1 + 2 * t) * (1 - t) ** 2;
    const b = t * (1 - t) ** 2;
    const c = t * t * (3 - 2 * t);
    const d = -t * t * (1 - t);
    const radius = a * last.radius + b * length * slope + c * end.radius + d * length * back;
    return { axial: last.axial + t * length, radius: Math.max(radius, LEAST * lipRadius) };
  });
}
