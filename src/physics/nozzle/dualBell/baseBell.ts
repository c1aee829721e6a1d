import type { WallPoint } from '../../flow/wallMarch.ts';
import { bellAnglesOf, parabolaPoints, THROAT_ARC_DOWNSTREAM } from '../bellShape.ts';
import type { BellSpec } from '../changing/plainBells.ts';
import type { DualBellSpec } from '../model.ts';
import { bezier } from '../nozzleWall.ts';

/** The first bell of a dual bell, as a bell of its own. */
export function baseBell({ baseAreaRatio, baseLength, throatAngle, baseLipAngle }: DualBellSpec): BellSpec {
  return {
    kind: 'bell',
    areaRatio: baseAreaRatio,
    length: baseLength,
    ...(throatAngle === undefined ? {} : { throatAngle }),
    ...(baseLipAngle === undefined ? {} : { lipAngle: baseLipAngle }),
  };
}

/** Points on the throat arc and on the parabola; finer at its start, where the flow changes most. */
const ON_ARC = 24;
const ON_PARABOLA = 72;

/** The wall of a bell behind the throat, in throat radii, from just behind the throat to the lip. */
export function bellWallPoints(bell: BellSpec): readonly WallPoint[] {
  const angles = bellAnglesOf(bell);
  const arc = Array.from({ length: ON_ARC }, (_, i): WallPoint => {
    const angle = (angles.throatAngle * (i + 1)) / ON_ARC;
    return {
      axial: THROAT_ARC_DOWNSTREAM * Math.sin(angle),
      radius: 1 + THROAT_ARC_DOWNSTREAM * (1 - Math.cos(angle)),
      angle,
    };
  });
  const [[x0, r0], [x1, r1], [x2, r2]] = parabolaPoints(bell, angles);
  const parabola = Array.from({ length: ON_PARABOLA }, (_, i): WallPoint => {
    const t = ((i + 1) / ON_PARABOLA) ** 1.3;
    return {
      axial: bezier(x0, x1, x2, t),
      radius: bezier(r0, r1, r2, t),
      angle: Math.atan2((1 - t) * (r1 - r0) + t * (r2 - r1), (1 - t) * (x1 - x0) + t * (x2 - x1)),
    };
  });
  return [...arc, ...parabola];
}
