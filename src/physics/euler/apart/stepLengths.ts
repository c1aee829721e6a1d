/** How long a step each strip may take: its own waves no further than a share of a cell, nor those that come from beside it. */

import { type Field, soundSpeedAt } from '../field.ts';
import { cellAt } from '../mesh.ts';
import type { Seam } from './seams.ts';

/** The slowest takes at most one step for 2 to the power of so many of the quickest. */
const MOST_LEVEL = 6;
/** Strips side by side differ by no more. */
const STEEPEST = 2;
/** Waves come from so many strips away within a step. */
const REACH = 2;
/** What a step of a strip costs beside its cells, in cells: sides and seams. */
const ASIDE = 100;

export interface StepLengths {
  /** Of each strip: a step lasts 2 to the power of this of the shortest. */ readonly levels: readonly number[];
  readonly highest: number;
  /** [s] of the strips at level 0 */ readonly shortest: number;
}

export function stepLengthsFor(fields: readonly Field[], seams: readonly (readonly Seam[])[]) {
  const beside = seams.map((own) => [...new Set(own.map(({ other }) => other))]);
  const work = fields.map(({ mesh: { ni, nj } }) => ni * nj + ASIDE);
  /** Levels above steps of `base`, none longer than `limits`. */
  function levelsOver(base: number, limits: readonly number[], most: number): readonly number[] {
    const capped = Math.min(MOST_LEVEL, Math.floor(Math.log2(most / base)));
    let levels = limits.map((limit) => Math.min(capped, Math.floor(Math.log2(limit / base) + 1e-12)));
    for (let n = 0; n < levels.length; n++)
      levels = levels.map((level, s) =>
        Math.min(level, ...beside[s]!.map((other) => levels[other]! + STEEPEST)),
      );
    return levels;
  }
  /** Cells stepped a second. */
  const costOf = (base: number, levels: readonly number[]): number =>
    levels.reduce((sum, level, s) => sum + work[s]! / 2 ** level, 0) / base;
  return (longest: readonly number[], courant: number, most: number): StepLengths => {
    const quickest = fields.map(quickestWave);
    let speeds: readonly number[] = quickest;
    for (let n = 0; n < REACH; n++)
      speeds = speeds.map((speed, s) => Math.max(speed, ...beside[s]!.map((other) => speeds[other]!)));
    const least = Math.min(most, courant * Math.min(...longest));
    if (!(least > 0)) return { levels: [], highest: 0, shortest: least };
    // What comes from beside, as quick as it is there, passes no more than a cell within a step.
    const limits = longest.map((own, s) =>
      Math.max(least, own * Math.min(courant, quickest[s]! / speeds[s]!)),
    );
    // Where the quickest take steps a little shorter than they could, others may take twice as long ones.
    let base = least;
    let levels = levelsOver(least, limits, most);
    for (const limit of limits) {
      const shorter = limit / 2 ** Math.ceil(Math.log2(limit / least));
      const own = levelsOver(shorter, limits, most);
      if (costOf(shorter, own) < costOf(base, levels)) [base, levels] = [shorter, own];
    }
    const highest = Math.max(...levels);
    // No sliver of a step at the end.
    const steps = Math.ceil(most / (base * 2 ** highest) - 1e-9);
    return { levels, highest, shortest: most / steps / 2 ** highest };
  };
}

/** [m/s] */
function quickestWave(field: Field): number {
  const { mesh, u, v } = field;
  let quickest = 0;
  for (let j = 0; j < mesh.nj; j++) {
    const from = cellAt(mesh, 0, j);
    for (let at = from; at < from + mesh.ni; at++) {
      const speed = Math.sqrt(u[at]! * u[at]! + v[at]! * v[at]!) + soundSpeedAt(field, at);
      if (speed > quickest) quickest = speed;
    }
  }
  return quickest;
}
