import { STANDARD_ATMOSPHERE } from '../../physics/constants.ts';
import type { CriterionAt, SeparationAt, ThrottlePoint } from '../../physics/nozzle/index.ts';
import type { EngineSolution } from '../solution.ts';
import type { CriterionRow, EngineSeparation, ThrottleRow } from './model.ts';
import { placeOnWall, rowSeparation } from './rowSeparation.ts';
import { wallInUse } from './wallInUse.ts';

/** Chamber pressures over the design's at which the ring is given [–]. */
const SHARES = [0.1, 0.15, 0.2, 0.25, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1];

const THROTTLE_NOTE =
  'The gas at other chamber pressures is scaled: same Mach number and same pressure over the chamber’s at each place of the wall. Exact for a gas whose γ stays; for oxygen with methane or hydrogen from 100 bar the place is off by up to 2 % in area ratio down to 40 % throttle and 4 % at a tenth.';

/** Separation at sea level by every criterion, and over the throttle; undefined where there is no wall to leave. */
export function engineSeparation(solution: EngineSolution): EngineSeparation | undefined {
  const wall = wallInUse(solution.nozzle, STANDARD_ATMOSPHERE);
  const seaLevel = seaLevelOf(solution);
  if (!wall || seaLevel === undefined) return undefined;
  const { best, bestRising, low, high } = wall.lowestFullThrottle(STANDARD_ATMOSPHERE);
  return {
    deciding: wall.deciding(STANDARD_ATMOSPHERE),
    criteria: wall.criteria(STANDARD_ATMOSPHERE).map((one) => criterionRow(solution, one)),
    seaLevel: rowSeparation(solution, seaLevel),
    lowestFullThrottle: { best, bestRising, low, high },
    throttle: wall.alongThrottle(STANDARD_ATMOSPHERE, SHARES).map((point) => throttleRow(solution, point)),
    throttleNote: THROTTLE_NOTE,
  };
}

function seaLevelOf({ nozzle }: EngineSolution): SeparationAt | undefined {
  return nozzle.at(STANDARD_ATMOSPHERE).separation;
}

function criterionRow(solution: EngineSolution, one: CriterionAt): CriterionRow {
  const { id, name, source, range, counts, why, ratio, place, limitAmbient, lowestFullThrottle } = one;
  return {
    id,
    name,
    source,
    range,
    counts,
    ...(why !== null && { why }),
    ...(ratio !== null && { ratio }),
    ...(place !== null && { place: placeOnWall(solution, place) }),
    ...(limitAmbient !== null && { limitAmbient }),
    ...(lowestFullThrottle !== null && { lowestFullThrottle }),
  };
}

function throttleRow(solution: EngineSolution, point: ThrottlePoint): ThrottleRow {
  return {
    share: point.share,
    case: point.case,
    rising: placeOnWall(solution, point.rising),
    falling: placeOnWall(solution, point.falling),
    earliest: placeOnWall(solution, point.earliest),
    latest: placeOnWall(solution, point.latest),
  };
}
