/** The jet behind an engine: the answer's plume, and that at any ambient pressure. */

import { STANDARD_ATMOSPHERE } from '../physics/constants.ts';
import type { Contour } from '../physics/nozzle/index.ts';
import type { Given, JetPoint, Plume } from '../physics/plume/index.ts';
import { plumeAbsences } from './absences.ts';
import type { ConditionRow, Reason } from './model.ts';
import type { BoundaryPoint, PlumeAnswer, PlumeFigures, PlumePoint } from './plumeModel.ts';
import type { EngineSolution } from './solution.ts';

/** Points of a boundary in an answer: enough for a smooth line. */
const MOST_POINTS = 48;

/** The plume at the conditions of an answer, and why its nulls are null. */
export function plumeAnswer(
  solution: EngineSolution,
  altitudes: readonly ConditionRow[],
  ambients: readonly ConditionRow[],
): { readonly plume: PlumeAnswer; readonly reasons: readonly Reason[] } {
  const reasons: Reason[] = [];
  const at = (ambientPressure: number, path: string): PlumeFigures => {
    const plume = solution.plume.at(ambientPressure);
    reasons.push(...reasonsOf(plume, `plume.${path}`));
    return plumeFigures(solution, plume);
  };
  return {
    plume: {
      seaLevel: at(STANDARD_ATMOSPHERE, 'seaLevel'),
      vacuum: at(0, 'vacuum'),
      altitudes: altitudes.map(({ altitude, ambientPressure }, i) => ({
        altitude: altitude ?? 0,
        ...at(ambientPressure, `altitudes[${i}]`),
      })),
      ambients: ambients.map(({ ambientPressure }, i) => at(ambientPressure, `ambients[${i}]`)),
    },
    reasons,
  };
}

/** The plume at an ambient pressure [Pa]. A few milliseconds: fit for moving an altitude handle. */
export function plumeAt(solution: EngineSolution, ambientPressure: number): PlumeFigures {
  return plumeFigures(solution, solution.plume.at(ambientPressure));
}

/** The figures of a computed plume, in metres. */
export function plumeFigures(solution: EngineSolution, plume: Plume): PlumeFigures {
  const { throatRadius, wall } = contourAt(solution, plume.ambientPressure);
  const lipAxial = plume.lipAxial === null ? wall[wall.length - 1]!.axial : plume.lipAxial * throatRadius;
  const lip = plume.lip.value;
  const full = plume.fullyExpanded.value;
  const outline = plume.outline.value;
  const place = ({ axial, radius }: JetPoint): PlumePoint => ({
    axial: lipAxial + axial * throatRadius,
    radius: radius * throatRadius,
  });
  const metres = ({ value }: Given<number>): number | null => (value === null ? null : value * throatRadius);
  return {
    ambientPressure: plume.ambientPressure,
    regime: lip?.regime ?? null,
    boundaryTurn: lip?.turn ?? null,
    boundaryAngle: lip && lip.lipAngle + lip.turn,
    boundaryMach: lip?.boundaryMach ?? null,
    boundaryPressure: lip?.boundaryPressure ?? null,
    fullyExpandedMach: full?.mach ?? null,
    fullyExpandedDiameter: full && full.diameter * 2 * throatRadius,
    cellLength: metres(plume.cellLength),
    machDisk: metres(plume.machDisk),
    shockMeeting: plume.meeting.value,
    firstCrossing: outline?.firstCrossing ? place(outline.firstCrossing) : null,
    boundary:
      outline === null
        ? []
        : [
            ...thinned(outline.computed).map((point): BoundaryPoint => ({ ...place(point), sketch: false })),
            ...outline.sketched.slice(1).map((point): BoundaryPoint => ({ ...place(point), sketch: true })),
          ],
  };
}

/** The contour in use: a nozzle of two modes has one each. */
export function contourAt(solution: EngineSolution, ambientPressure: number): Contour {
  const { mode } = solution.nozzle.at(ambientPressure);
  return solution.positions.find((position) => position.mode === mode)?.contour ?? solution.contour;
}

/** Evenly by number, the first and the last kept. */
function thinned(points: readonly JetPoint[]): readonly JetPoint[] {
  if (points.length <= MOST_POINTS) return points;
  const step = (points.length - 1) / (MOST_POINTS - 1);
  return Array.from({ length: MOST_POINTS }, (_, i) => points[Math.round(i * step)]!);
}

function reasonsOf(plume: Plume, path: string): readonly Reason[] {
  return plumeAbsences(plume).map(({ key, why, mend }) => ({ path: `${path}.${key}`, reason: why, mend }));
}
