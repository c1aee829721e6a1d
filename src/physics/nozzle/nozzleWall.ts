import { ProblemError } from '../../numerics/problem.ts';
import { type Arc, arcArea, arcWallRadius, frustumArea } from './arc.ts';
import { bellAnglesOf, parabolaPoints, REFERENCE_HALF_ANGLE, THROAT_ARC_DOWNSTREAM } from './bellShape.ts';
import { outerBell, wholeBell } from './changing/plainBells.ts';
import type { ContourPoint, NozzleSpec } from './model.ts';

/** Largest turn between two points of the throat arc [rad]: 4°. */
const ARC_STEP = Math.PI / 45;
/** Points for each factor e of radius, so that the gas state changes evenly from point to point. */
const POINTS_PER_E_FOLD = 14;
/** Largest distance between a parabola and its chords, in throat radii. */
const CHORD_ERROR = 0.005;

export interface NozzleWall {
  /** From the throat to the lip. */ readonly points: readonly ContourPoint[];
  /** [m²] */ readonly area: number;
  /** [rad] */ readonly steepestAngle: number;
  /** [rad] */ readonly lipAngle: number;
}

/**
 * Wall from throat to lip: arc of 0.382 throat radii, then a straight cone or a parabola, joined without a kink.
 *
 * cone      straight from the arc's end at half-angle α to the lip radius
 * bell      quadratic Bézier curve from N (slope tan θ_n) to E (slope tan θ_e), its middle point where the two tangents
 *           meet: the same as the skewed parabola through these conditions
 * extendable skirt, insert   the whole bell
 * ideal, adapting   no wall of their own; a notional 15° cone of the same area ratio
 *
 * @param throatRadius [m]
 * Source: NASA SP-125 and SP-8120 (arcs; from memory); R. Newlands, "The Thrust Optimised Parabolic nozzle", 2017 (Bézier).
 */
export function nozzleWall(spec: NozzleSpec, throatRadius: number): NozzleWall {
  switch (spec.kind) {
    case 'plug':
    case 'dualBell':
    case 'expansionDeflection':
    case 'idealBell':
      throw new Error(`The walls of ${spec.kind} are drawn by its model: NozzleModel.contour`);
    case 'bell':
      return parabolaWall(spec, throatRadius);
    case 'cone':
      return coneWall(spec.areaRatio, spec.halfAngle, throatRadius);
    case 'ideal':
    case 'adapting':
      return coneWall(spec.areaRatio, notionalHalfAngle(spec.areaRatio), throatRadius);
    case 'extendableSkirt':
      return parabolaWall(wholeBell(spec), throatRadius);
    case 'insert':
      return parabolaWall(outerBell(spec), throatRadius);
  }
}

/** 15°, or less where the lip lies on the throat arc already. */
function notionalHalfAngle(areaRatio: number): number {
  const rise = (Math.sqrt(areaRatio) - 1) / THROAT_ARC_DOWNSTREAM;
  return Math.min(REFERENCE_HALF_ANGLE, rise < 1 ? Math.acos(1 - rise) : REFERENCE_HALF_ANGLE);
}

function throatArc(throatRadius: number): Arc {
  return {
    centre: throatRadius * (1 + THROAT_ARC_DOWNSTREAM),
    radius: throatRadius * THROAT_ARC_DOWNSTREAM,
    side: -1,
  };
}

function arcPoints(arc: Arc, angle: number): ContourPoint[] {
  const steps = Math.ceil(angle / ARC_STEP);
  return Array.from({ length: steps + 1 }, (_, i) => {
    const phi = (angle * i) / steps;
    return {
      axial: arc.radius * Math.sin(phi),
      radius: arcWallRadius(arc, phi),
      angle: phi,
      part: i < steps ? 'throat' : 'nozzle',
    };
  });
}

/** The throat arc alone, up to an angle [rad]: points and wetted area [m²]. @param throatRadius [m] */
export function throatArcWall(
  angle: number,
  throatRadius: number,
): { readonly points: readonly ContourPoint[]; readonly area: number } {
  const arc = throatArc(throatRadius);
  return { points: arcPoints(arc, angle), area: arcArea(arc, angle) };
}

function coneWall(areaRatio: number, halfAngle: number, throatRadius: number): NozzleWall {
  const arc = throatArc(throatRadius);
  const points = arcPoints(arc, halfAngle);
  const end = points.at(-1)!;
  const lip = throatRadius * Math.sqrt(areaRatio);
  const rise = lip - end.radius;
  if (rise < -1e-12 * throatRadius) throw coneWithinArc(areaRatio, halfAngle, end.radius / throatRadius);
  const length = Math.max(0, rise) / Math.tan(halfAngle);
  if (length > 1e-9 * throatRadius) {
    const count = pieces(lip / end.radius);
    for (let i = 1; i <= count; i++) {
      const radius = i < count ? end.radius * (lip / end.radius) ** (i / count) : lip;
      points.push({
        axial: end.axial + (radius - end.radius) / Math.tan(halfAngle),
        radius,
        angle: halfAngle,
        part: 'nozzle',
      });
    }
  }
  return {
    points,
    area: arcArea(arc, halfAngle) + frustumArea(end.radius, end.radius + Math.max(0, rise), length),
    steepestAngle: halfAngle,
    lipAngle: halfAngle,
  };
}

function pieces(radiusRatio: number): number {
  return Math.max(4, Math.ceil(POINTS_PER_E_FOLD * Math.log(radiusRatio)));
}

function parabolaWall(spec: NozzleSpec & { kind: 'bell' }, throatRadius: number): NozzleWall {
  const { throatAngle, lipAngle } = bellAnglesOf(spec);
  const arc = throatArc(throatRadius);
  const points = arcPoints(arc, throatAngle);
  const [[x0, r0], [x1, r1], [x2, r2]] = parabolaPoints(spec, { throatAngle, lipAngle }).map(
    (point) => point.map((v) => v * throatRadius) as [number, number],
  ) as [[number, number], [number, number], [number, number]];
  const bend = Math.hypot(x0 - 2 * x1 + x2, r0 - 2 * r1 + r2) / throatRadius;
  const count = Math.max(pieces(r2 / r0), Math.ceil(Math.sqrt(bend / (4 * CHORD_ERROR))));
  for (let i = 1; i <= count; i++) {
    const t = i / count;
    const dx = (1 - t) * (x1 - x0) + t * (x2 - x1);
    const dr = (1 - t) * (r1 - r0) + t * (r2 - r1);
    points.push({
      axial: i < count ? bezier(x0, x1, x2, t) : x2,
      radius: i < count ? bezier(r0, r1, r2, t) : r2,
      angle: i < count ? Math.atan2(dr, dx) : lipAngle,
      part: 'nozzle',
    });
  }
  return {
    points,
    area: arcArea(arc, throatAngle) + parabolaArea([x0, r0], [x1, r1], [x2, r2]),
    steepestAngle: throatAngle,
    lipAngle,
  };
}

export function bezier(p0: number, p1: number, p2: number, t: number): number {
  return (1 - t) * (1 - t) * p0 + 2 * t * (1 - t) * p1 + t * t * p2;
}

/** 2π ∫ r ds along the parabola by Simpson's rule, 64 intervals: error far below 1e-6 of the area. */
function parabolaArea(
  p0: readonly [number, number],
  p1: readonly [number, number],
  p2: readonly [number, number],
): number {
  const intervals = 64;
  let sum = 0;
  for (let i = 0; i <= intervals; i++) {
    const t = i / intervals;
    const dx = 2 * ((1 - t) * (p1[0] - p0[0]) + t * (p2[0] - p1[0]));
    const dr = 2 * ((1 - t) * (p1[1] - p0[1]) + t * (p2[1] - p1[1]));
    const weight = i === 0 || i === intervals ? 1 : i % 2 === 1 ? 4 : 2;
    sum += weight * bezier(p0[1], p1[1], p2[1], t) * Math.hypot(dx, dr);
  }
  return (2 * Math.PI * sum) / (3 * intervals);
}

function coneWithinArc(areaRatio: number, halfAngle: number, arcEnd: number): ProblemError {
  const least = arcEnd ** 2;
  return new ProblemError({
    code: 'cone-within-throat-arc',
    what: `At an area ratio of ${areaRatio} the lip is reached before the throat arc has turned to ${((halfAngle * 180) / Math.PI).toFixed(1)}°.`,
    mend: `Give an area ratio above ${least.toFixed(3)}, or a smaller half-angle.`,
    where: 'nozzle.areaRatio',
    facts: { areaRatio, halfAngle, least },
  });
}
