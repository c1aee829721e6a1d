/**
 * Where one criterion lets the gas go, at any ambient pressure.
 *
 * Each place of the wall has a limit: the ambient pressure at which the criterion says that the gas leaves there. The outside
 * reaches into the nozzle from its lip, so that a jet already on the wall lets go first there, and the ring walks upstream
 * as long as the limit is exceeded: with the ambient pressure rising (or the chamber pressure falling) it stands at the last
 * place, counted from the throat, that still holds. Gas that fills a nozzle while the chamber pressure rises comes
 * from the throat and is stopped by the first place that does not hold. The two are the same where the limit falls along the
 * wall, as in cones and bells; else they differ, and that is a hysteresis.
 */

import type { Along, WallTable } from './wallTable.ts';
import { lipOf, throatOf } from './wallTable.ts';

export interface LimitAlongWall {
  /** ln of the limit at each station [ln Pa]. */ readonly lnLimit: Float64Array;
  /** Greatest limit from each station to the lip. */ readonly holdsBehind: Float64Array;
  /** Least limit from the throat to each station. */ readonly holdsAhead: Float64Array;
}

/** @param lnLimit ln of the ambient pressure at which the gas leaves each station [ln Pa] */
export function limitAlongWall(lnLimit: Float64Array): LimitAlongWall {
  const holdsBehind = Float64Array.from(lnLimit);
  for (let i = lnLimit.length - 2; i >= 0; i--) holdsBehind[i] = Math.max(lnLimit[i]!, holdsBehind[i + 1]!);
  const holdsAhead = Float64Array.from(lnLimit);
  for (let i = 1; i < lnLimit.length; i++) holdsAhead[i] = Math.min(lnLimit[i]!, holdsAhead[i - 1]!);
  return { lnLimit, holdsBehind, holdsAhead };
}

/** The last place from the throat that holds against an ambient pressure: the lip if all of the wall, the throat if none. */
export function lastThatHolds(wall: WallTable, limit: LimitAlongWall, ambientPressure: number): Along {
  const ln = Math.log(ambientPressure);
  const held = lastAtLeast(limit.holdsBehind, ln);
  if (held < 0) return throatOf();
  if (held === wall.count - 1) return lipOf(wall);
  return crossing(limit.lnLimit, held, ln);
}

/** The first place from the throat that does not hold: the lip if there is none. */
export function firstThatLetsGo(wall: WallTable, limit: LimitAlongWall, ambientPressure: number): Along {
  const ln = Math.log(ambientPressure);
  const held = lastAtLeast(limit.holdsAhead, ln);
  if (held < 0) return throatOf();
  if (held === wall.count - 1) return lipOf(wall);
  return crossing(limit.lnLimit, held, ln);
}

function crossing(lnLimit: Float64Array, cell: number, ln: number): Along {
  const from = lnLimit[cell]!;
  return { cell, share: (from - ln) / (from - lnLimit[cell + 1]!) };
}

/** Last index of a falling column at which it is at least `value`; −1 if there is none. */
function lastAtLeast(column: Float64Array, value: number): number {
  let low = -1;
  let high = column.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (column[middle]! >= value) low = middle;
    else high = middle - 1;
  }
  return low;
}
