import { frustumArea } from '../arc.ts';
import type { BellAngles } from '../bellAngles.ts';
import type { ContourPoint } from '../model.ts';
import type { NozzleWall } from '../nozzleWall.ts';
import type { DualBellField } from './dualBellField.ts';

/** The wall that the flow field has shaped, from throat to lip [m]; at the kink the angle is that behind it. */
export function dualBellWall(
  { stations, angles, behindKink }: DualBellField,
  { throatAngle }: BellAngles,
  throatRadius: number,
): NozzleWall {
  const points: ContourPoint[] = [];
  stations.forEach(({ axial, radius }, i) => {
    if (i === behindKink - 1) return;
    const angle = angles[i]!;
    const isArc = i < behindKink && points.length > 0 && axial < ARC_END * Math.sin(throatAngle);
    points.push({
      axial: throatRadius * axial,
      radius: throatRadius * radius,
      angle: i === 0 ? 0 : angle,
      part: i === 0 || isArc ? 'throat' : 'nozzle',
    });
  });
  const area = points.reduce((sum, point, i) => {
    const from = points[i - 1];
    return from === undefined ? 0 : sum + frustumArea(from.radius, point.radius, point.axial - from.axial);
  }, 0);
  return { points, area, steepestAngle: Math.max(...angles), lipAngle: angles.at(-1)! };
}
/** The throat arc's radius downstream, in throat radii, less a hair: its last point belongs to the nozzle. */
const ARC_END = 0.382 * (1 - 1e-9);
