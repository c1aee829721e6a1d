import { ProblemError } from '../../../numerics/problem.ts';
import type { ContourPoint, InsertSpec } from '../model.ts';
import { type NozzleWall, nozzleWall } from '../nozzleWall.ts';
import { insertBell, outerBell } from './plainBells.ts';

/** How far the insert may stick out of the bell's wall, in throat radii: the two share the throat arc. */
const TOUCHING = 1e-6;

/**
 * Height of the step from the insert's lip out to the wall of the bell round it, in throat radii [–].
 *
 * @throws ProblemError `insert-does-not-fit` where the insert is longer or anywhere wider than the bell
 */
export function insertStep(spec: InsertSpec): number {
  const bell = nozzleWall(outerBell(spec), 1);
  const insert = nozzleWall(insertBell(spec), 1);
  const sticksOut = insert.points.some(({ axial, radius }) => !(radius <= radiusAt(bell, axial) + TOUCHING));
  const lip = insert.points.at(-1)!;
  if (sticksOut) throw doesNotFit(spec);
  return radiusAt(bell, lip.axial) - lip.radius;
}

/** Radius of the wall at an axial place, straight between its points; NaN-free: 0 beyond the lip, where there is no wall. */
function radiusAt({ points }: NozzleWall, axial: number): number {
  const next = points.findIndex((point) => point.axial >= axial);
  if (next < 0) return 0;
  if (next === 0) return points[0]!.radius;
  const from = points[next - 1] as ContourPoint;
  const to = points[next] as ContourPoint;
  return from.radius + ((to.radius - from.radius) * (axial - from.axial)) / (to.axial - from.axial);
}

function doesNotFit(spec: InsertSpec): ProblemError {
  return new ProblemError({
    code: 'insert-does-not-fit',
    what: `An insert of area ratio ${spec.insertAreaRatio} does not fit into a bell of area ratio ${spec.areaRatio}: its wall would cross the bell’s.`,
    why: 'An insert stands inside the bell from the throat to its own lip.',
    mend: 'Make the insert’s area ratio smaller or its length larger: a longer insert of the same area ratio opens less.',
    where: 'nozzle.insertAreaRatio',
    facts: { insertAreaRatio: spec.insertAreaRatio, areaRatio: spec.areaRatio },
  });
}
