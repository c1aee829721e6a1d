import { frustumArea } from '../arc.ts';
import type { ContourPoint, DualBellSpec } from '../model.ts';
import { type NozzleWall, nozzleWall } from '../nozzleWall.ts';
import { baseBell } from './baseBell.ts';
import type { DualBellField } from './dualBellField.ts';

/** The base as drawn for a bell, then the wall that the flow field has shaped, throat to lip [m]. */
export function dualBellWall(spec: DualBellSpec, field: DualBellField, throatRadius: number): NozzleWall {
  const base = nozzleWall(baseBell(spec), throatRadius);
  const extension = field.stations.slice(field.behindKink).map(
    ({ axial, radius }, i): ContourPoint => ({
      axial: throatRadius * axial,
      radius: throatRadius * radius,
      angle: field.angles[i]!,
      part: 'nozzle',
    }),
  );
  const area = extension.reduce((sum, point, i) => {
    const from = extension[i - 1];
    return from === undefined ? 0 : sum + frustumArea(from.radius, point.radius, point.axial - from.axial);
  }, 0);
  return {
    // The extension begins where the base ends: one point, with the angle behind the kink.
    points: [...base.points.slice(0, -1), ...extension],
    area: base.area + area,
    steepestAngle: Math.max(base.steepestAngle, ...field.angles),
    lipAngle: field.angles.at(-1)!,
  };
}
