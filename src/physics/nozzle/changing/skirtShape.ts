import { ProblemError } from '../../../numerics/problem.ts';
import { bellAnglesOf, parabolaPoints, referenceConeLength } from '../bellShape.ts';
import type { ExtendableSkirtSpec } from '../model.ts';
import { bezier } from '../nozzleWall.ts';
import { type BellSpec, wholeBell } from './plainBells.ts';

/**
 * The bell that is left when the skirt is drawn up: the same wall, cut where its area ratio is the short one.
 *
 * A piece of a parabola is a parabola: the front part is the bell with the same angle behind the throat, the wall's own
 * angle at the cut as its lip angle, and its own length over the 15° cone's of its area ratio.
 *
 * @throws ProblemError `skirt-cut-outside-bell` where the cut is not on the parabola
 */
export function shortBell(spec: ExtendableSkirtSpec): BellSpec {
  const whole = wholeBell(spec);
  const angles = bellAnglesOf(whole);
  const [[x0, r0], [x1, r1], [x2, r2]] = parabolaPoints(whole, angles);
  const radius = Math.sqrt(spec.shortAreaRatio);
  if (!(radius > r0 && radius < r2)) throw cutOutside(spec, r0 * r0);
  // r(t) is a quadratic that grows with t: its root in 0…1.
  const a = r0 - 2 * r1 + r2;
  const b = r1 - r0;
  const t = (radius - r0) / (b + Math.sqrt(b * b + a * (radius - r0)));
  const axial = bezier(x0, x1, x2, t);
  return {
    kind: 'bell',
    areaRatio: spec.shortAreaRatio,
    length: axial / referenceConeLength(spec.shortAreaRatio),
    throatAngle: angles.throatAngle,
    lipAngle: Math.atan2((1 - t) * (r1 - r0) + t * (r2 - r1), (1 - t) * (x1 - x0) + t * (x2 - x1)),
  };
}

function cutOutside(spec: ExtendableSkirtSpec, least: number): ProblemError {
  return new ProblemError({
    code: 'skirt-cut-outside-bell',
    what: `A bell of area ratio ${spec.areaRatio} cannot be cut at an area ratio of ${spec.shortAreaRatio}.`,
    why: 'The cut has to lie between the end of the throat arc and the lip.',
    mend: `Give a short area ratio above ${least.toFixed(2)} and below ${spec.areaRatio}; a third of it is a usual choice.`,
    where: 'nozzle.shortAreaRatio',
    facts: { shortAreaRatio: spec.shortAreaRatio, least, areaRatio: spec.areaRatio },
  });
}
