/** Every criterion on one wall: where it lets the gas go, and whether it counts there. */

import type { WallStation } from '../wallStation.ts';
import { CRITERIA, type Criterion, DECIDING, DECIDING_WITHOUT_MACH, type JudgedWall } from './criteria.ts';
import { firstThatLetsGo, type LimitAlongWall, lastThatHolds, limitAlongWall } from './limitAlongWall.ts';
import type { WallPlace } from './model.ts';
import { type Along, angleAt, placeAt, type WallTable } from './wallTable.ts';

/** A criterion with its limit along the wall; null where it has none (no Mach number). */
export interface JudgedCriterion {
  readonly criterion: Criterion;
  readonly limit: LimitAlongWall | null;
}

export interface Judgement {
  readonly criterion: Criterion;
  readonly along: Along;
  readonly place: WallPlace;
  /** Why it does not count here; null: it counts. */ readonly why: string | null;
}

/** Which way the ring moves: `falling`: the nozzle was full; `rising`: it is being filled. */
export type Direction = 'falling' | 'rising';

export function judgedCriteria(
  stations: readonly WallStation[],
  table: WallTable,
  judged: JudgedWall,
): readonly JudgedCriterion[] {
  return CRITERIA.map((criterion) => {
    const limits = stations.map(({ pressure }, i) =>
      criterion.limitAmbient(pressure, table.mach === null ? null : table.mach[i]!, judged),
    );
    if (limits.some((limit) => limit === null)) return { criterion, limit: null };
    return { criterion, limit: limitAlongWall(Float64Array.from(limits, (limit) => Math.log(limit!))) };
  });
}

/** Null where the criterion has no value. */
export function judge(
  table: WallTable,
  { criterion, limit }: JudgedCriterion,
  ambientPressure: number,
  chamberPressure: number,
  direction: Direction = 'falling',
): Judgement | null {
  if (limit === null) return null;
  const along = (direction === 'falling' ? lastThatHolds : firstThatLetsGo)(table, limit, ambientPressure);
  const place = placeAt(table, along);
  return {
    criterion,
    along,
    place,
    why: whyNot(criterion, place, angleAt(table, along), chamberPressure / ambientPressure),
  };
}

/** The criterion whose place is the best value: see `docs/methods/nozzle-separation.md`. */
export function isDeciding(criterion: Criterion, table: WallTable): boolean {
  return criterion.id === (table.mach === null ? DECIDING_WITHOUT_MACH : DECIDING);
}

function whyNot(
  { mach, pressureRatio, wallAngle }: Criterion,
  place: WallPlace,
  angle: number,
  ratio: number,
): string | null {
  if (mach !== null && place.mach !== null && (place.mach < mach.low || place.mach > mach.high)) {
    return `Mach ${place.mach.toFixed(2)} at its place lies outside ${mach.low} to ${mach.high}.`;
  }
  if (pressureRatio !== null && (ratio < pressureRatio.low || ratio > pressureRatio.high)) {
    const said = Number.isFinite(ratio) ? ratio.toPrecision(3) : 'without bound';
    return `Chamber over outside pressure, ${said}, lies outside ${pressureRatio.low} to ${pressureRatio.high}.`;
  }
  if (wallAngle !== null && angle < wallAngle) {
    return `The wall stands at ${degrees(angle)}° to the axis at its place; below ${degrees(wallAngle)}° gas lets go at a higher pressure than it says.`;
  }
  return null;
}

function degrees(angle: number): string {
  return ((angle * 180) / Math.PI).toFixed(1);
}
