import type { JudgedWall } from './criteria.ts';
import { type JudgedCriterion, judge } from './judgement.ts';
import type { CriterionAt } from './model.ts';
import type { WallTable } from './wallTable.ts';

/** Every criterion at one ambient pressure, counting or not. */
export function criteriaAt(
  table: WallTable,
  criteria: readonly JudgedCriterion[],
  judged: JudgedWall,
  ambientPressure: number,
): readonly CriterionAt[] {
  const { chamberPressure } = judged;
  return criteria.map((one): CriterionAt => {
    const { id, name, source, range } = one.criterion;
    const found = judge(table, one, ambientPressure, chamberPressure);
    if (found === null || one.limit === null) {
      return {
        id,
        name,
        source,
        range,
        counts: false,
        why: 'The gas has no Mach number somewhere along the wall.',
        ratio: null,
        place: null,
        limitAmbient: null,
        lowestFullThrottle: null,
      };
    }
    const limitAmbient = Math.exp(one.limit.lnLimit[table.count - 1]!);
    return {
      id,
      name,
      source,
      range,
      counts: found.why === null,
      why: found.why,
      ratio:
        ambientPressure === 0
          ? null
          : one.criterion.ratio(found.place.mach, chamberPressure / ambientPressure, judged),
      place: found.place,
      limitAmbient,
      lowestFullThrottle: ambientPressure / limitAmbient,
    };
  });
}
