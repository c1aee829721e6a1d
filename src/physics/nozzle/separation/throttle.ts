/**
 * The ring where the gas lets go, over the chamber pressure at a given ambient pressure.
 *
 * The gas is scaled: at another chamber pressure the state at each place of the wall keeps its Mach number and its pressure
 * over the chamber's. That is exact for a perfect gas; the composition of a hot gas shifts a little with pressure (how far
 * that is off stands in docs/methods/nozzle-separation.md). Then everything depends on p_c/p_a alone, and chamber pressure p_c·s at
 * ambient p_a is the design's chamber pressure at ambient p_a/s.
 */

import type { Criterion } from './criteria.ts';
import { type Direction, type JudgedCriterion, type Judgement, judge } from './judgement.ts';
import type { FlowCase, FullThrottle, ThrottlePoint, WallPlace, WallSeparation } from './model.ts';
import type { WallTable } from './wallTable.ts';

export interface ThrottledWall {
  readonly table: WallTable;
  readonly criteria: readonly JudgedCriterion[];
  /** [Pa] of the design */ readonly chamberPressure: number;
  readonly isDeciding: (criterion: Criterion) => boolean;
  readonly caseAt: (ambientPressure: number) => FlowCase;
}

export function throttleOf({
  table,
  criteria,
  chamberPressure,
  isDeciding,
  caseAt,
}: ThrottledWall): Pick<WallSeparation, 'alongThrottle' | 'lowestFullThrottle'> {
  function judgements(ambientPressure: number, direction: Direction): readonly Judgement[] {
    return criteria
      .flatMap((one) => judge(table, one, ambientPressure, chamberPressure, direction) ?? [])
      .filter(({ why, criterion }) => why === null || isDeciding(criterion));
  }

  function pointAt(ambientPressure: number, share: number): ThrottlePoint {
    const scaled = ambientPressure / share;
    const falling = judgements(scaled, 'falling');
    const rising = judgements(scaled, 'rising');
    const byPlace = [...falling, ...rising].sort((a, b) => a.place.axial - b.place.axial);
    return {
      share,
      rising: scalePressure(rising.find(({ criterion }) => isDeciding(criterion))!.place, share),
      falling: scalePressure(falling.find(({ criterion }) => isDeciding(criterion))!.place, share),
      earliest: scalePressure(byPlace[0]!.place, share),
      latest: scalePressure(byPlace[byPlace.length - 1]!.place, share),
      case: caseAt(scaled),
    };
  }

  return {
    alongThrottle: (ambientPressure, shares) => shares.map((share) => pointAt(ambientPressure, share)),
    lowestFullThrottle: (ambientPressure): FullThrottle => {
      const last = table.count - 1;
      const byCriterion: FullThrottle['byCriterion'][number][] = [];
      let best = 0;
      let bestRising = 0;
      for (const one of criteria) {
        if (one.limit === null) continue;
        const share = ambientPressure / Math.exp(one.limit.lnLimit[last]!);
        const rising = ambientPressure / Math.exp(one.limit.holdsAhead[last]!);
        if (isDeciding(one.criterion)) {
          best = share;
          bestRising = rising;
          byCriterion.unshift({ name: one.criterion.name, share, rising });
        } else if (ambientPressure > 0 && countsAtItsLimit(one, ambientPressure, share))
          byCriterion.push({ name: one.criterion.name, share, rising });
      }
      const spread = byCriterion.flatMap(({ share, rising }) => [share, rising]);
      return { best, bestRising, low: Math.min(...spread), high: Math.max(...spread), byCriterion };
    },
  };

  /** Whether a criterion counts where it just holds the gas on to the lip. */
  function countsAtItsLimit(one: JudgedCriterion, ambientPressure: number, share: number): boolean {
    return judge(table, one, (ambientPressure / share) * (1 - 1e-9), chamberPressure)?.why === null;
  }
}

function scalePressure(place: WallPlace, share: number): WallPlace {
  return { ...place, pressure: place.pressure * share };
}
