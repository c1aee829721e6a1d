import type { WallPoint } from '../flow/wallMarch.ts';
import { bellAnglesOf, parabolaPoints, THROAT_ARC_DOWNSTREAM } from './bellShape.ts';
import type { NozzleSpec } from './model.ts';
import { bezier } from './nozzleWall.ts';

/** The wall of a round nozzle behind the throat, in throat radii: an arc, then a smooth curve to the lip. */
export interface RoundWall {
  /** Angle at which the arc ends [rad]. */ readonly turn: number;
  /** Radius of the arc [–]. */ readonly arcRadius: number;
  /** Point of the curve at a share 0 … 1 of its parameter. */ at(share: number): WallPoint;
  /** Length of curve for each unit of the share; 0 where the lip stands at the arc's end. */ pace(
    share: number,
  ): number;
}

/** The wall of a cone or a parabolic bell. */
export function roundWallOf(spec: NozzleSpec & { kind: 'bell' | 'cone' }): RoundWall {
  return spec.kind === 'bell' ? parabola(spec) : cone(spec.areaRatio, spec.halfAngle);
}

/** Points of the throat arc, `count` equal turns, the throat itself left out. */
export function arcPoints(
  { turn, arcRadius }: Pick<RoundWall, 'turn' | 'arcRadius'>,
  count: number,
): readonly WallPoint[] {
  return Array.from({ length: count }, (_, i) => {
    const angle = (turn * (i + 1)) / count;
    return {
      axial: arcRadius * Math.sin(angle),
      radius: 1 + arcRadius * (1 - Math.cos(angle)),
      angle,
    };
  });
}

function parabola(spec: NozzleSpec & { kind: 'bell' }): RoundWall {
  const angles = bellAnglesOf(spec);
  const [[x0, r0], [x1, r1], [x2, r2]] = parabolaPoints(spec, angles);
  const dx = (t: number): number => (1 - t) * (x1 - x0) + t * (x2 - x1);
  const dr = (t: number): number => (1 - t) * (r1 - r0) + t * (r2 - r1);
  return {
    turn: angles.throatAngle,
    arcRadius: THROAT_ARC_DOWNSTREAM,
    at: (t) => ({
      axial: bezier(x0, x1, x2, t),
      radius: bezier(r0, r1, r2, t),
      angle: Math.atan2(dr(t), dx(t)),
    }),
    pace: (t) => 2 * Math.hypot(dx(t), dr(t)),
  };
}

function cone(areaRatio: number, turn: number): RoundWall {
  const arcRadius = THROAT_ARC_DOWNSTREAM;
  const x0 = arcRadius * Math.sin(turn);
  const r0 = 1 + arcRadius * (1 - Math.cos(turn));
  const rise = Math.max(Math.sqrt(areaRatio) - r0, 0);
  return {
    turn,
    arcRadius,
    at: (t) => ({ axial: x0 + (t * rise) / Math.tan(turn), radius: r0 + t * rise, angle: turn }),
    pace: () => rise / Math.sin(turn),
  };
}

/** Points of the arc, and of the curve behind it, through which `axialAtRadius` draws straight lines. */
const OUTLINE = { arc: 24, curve: 72 } as const;

/**
 * Axial distance at a radius of the wall behind the throat, both in throat radii.
 *
 * @param wall null: a notional 15° cone to the area ratio
 */
export function axialAtRadius(wall: RoundWall | null, areaRatio: number): (radius: number) => number {
  const drawn = wall ?? cone(areaRatio, Math.PI / 12);
  const curve = Array.from({ length: OUTLINE.curve }, (_, i) => drawn.at((i + 1) / OUTLINE.curve));
  const points = [...arcPoints(drawn, OUTLINE.arc), ...curve];
  return (radius) => {
    const next = points.findIndex((point) => point.radius >= radius);
    const last = next < 0 ? points.length - 1 : next;
    const to = points[last]!;
    const from = last === 0 ? { axial: 0, radius: 1 } : points[last - 1]!;
    if (to.radius === from.radius) return to.axial;
    return from.axial + ((to.axial - from.axial) * (radius - from.radius)) / (to.radius - from.radius);
  };
}
