import { frustumArea } from '../arc.ts';
import { THROAT_ARC_DOWNSTREAM } from '../bellShape.ts';
import { type NozzleWall, throatArcWall } from '../nozzleWall.ts';
import type { RoundWall } from '../roundWall.ts';
import type { IdealContour } from './shape.ts';

/** The wall behind the arc as a smooth curve: a cubic in the axial distance between points, with their slopes. */
export function idealRoundWall({ turn, wall }: IdealContour): RoundWall {
  const x0 = wall[0]!.axial;
  const length = wall.at(-1)!.axial - x0;
  const piece = (x: number) => {
    let i = wall.findIndex(({ axial }) => axial >= x);
    i = i < 0 ? wall.length - 1 : Math.max(i, 1);
    const from = wall[i - 1]!;
    const to = wall[i]!;
    const h = to.axial - from.axial;
    const d = to.radius - from.radius;
    const m0 = Math.tan(from.angle) * h;
    const m1 = Math.tan(to.angle) * h;
    const t = (x - from.axial) / h;
    const [c2, c3] = [3 * d - 2 * m0 - m1, m0 + m1 - 2 * d];
    return {
      radius: from.radius + t * (m0 + t * (c2 + t * c3)),
      slope: (m0 + t * (2 * c2 + 3 * t * c3)) / h,
    };
  };
  return {
    turn,
    arcRadius: THROAT_ARC_DOWNSTREAM,
    at: (share) => {
      const axial = x0 + share * length;
      const { radius, slope } = piece(axial);
      return { axial, radius, angle: Math.atan(slope) };
    },
    pace: (share) => length * Math.hypot(1, piece(x0 + share * length).slope),
  };
}

/** The wall to scale. @param throatRadius [m] */
export function idealNozzleWall({ turn, wall }: IdealContour, throatRadius: number): NozzleWall {
  const arc = throatArcWall(turn, throatRadius);
  const points = wall.slice(1).map(({ axial, radius, angle }) => ({
    axial: axial * throatRadius,
    radius: radius * throatRadius,
    angle,
    part: 'nozzle' as const,
  }));
  let area = arc.area;
  let from = arc.points.at(-1)!;
  for (const to of points) {
    area += frustumArea(from.radius, to.radius, to.axial - from.axial);
    from = to;
  }
  return {
    points: [...arc.points, ...points],
    area,
    steepestAngle: Math.max(turn, ...points.map(({ angle }) => angle)),
    lipAngle: points.at(-1)!.angle,
  };
}
