/** How long a step each strip may take: its own waves no further than a share of a cell, nor those that come from beside it. */

import { type Field, soundSpeedAt } from '../field.ts';
import { cellAt } from '../mesh.ts';
import type { Seam } from './seams.ts';
import { narrowestIn } from './strips.ts';

/** The slowest takes at most one step for 2 to the power of so many of the quickest. */
const MOST_LEVEL = 6;
/** Strips side by side differ by no more. */
const STEEPEST = 2;
/** Waves come from so many strips away within a step. */
const REACH = 2;

export interface StepLengths {
  /** Of each strip: a step lasts 2 to the power of this of the shortest. */ readonly levels: readonly number[];
  readonly highest: number;
  /** [s] of the strips at level 0 */ readonly shortest: number;
}

export function stepLengthsFor(fields: readonly Field[], seams: readonly (readonly Seam[])[]) {
  const widths = fields.map(({ mesh }) => narrowestIn(mesh));
  const beside = seams.map((own) => [...new Set(own.map(({ other }) => other))]);
  return (longest: readonly number[], courant: number, most: number): StepLengths => {
    let speeds = fields.map(quickestWave);
    for (let n = 0; n < REACH; n++)
      speeds = speeds.map((speed, s) => Math.max(speed, ...beside[s]!.map((other) => speeds[other]!)));
    const least = Math.min(most, courant * Math.min(...longest));
    // What comes from beside passes no more than a cell within a step.
    const limits = longest.map((own, s) => Math.max(least, Math.min(courant * own, widths[s]! / speeds[s]!)));
    const capped = Math.min(MOST_LEVEL, Math.floor(Math.log2(most / least)));
    let levels = limits.map((limit) => Math.min(capped, Math.floor(Math.log2(limit / least))));
    for (let n = 0; n < levels.length; n++)
      levels = levels.map((level, s) =>
        Math.min(level, ...beside[s]!.map((other) => levels[other]! + STEEPEST)),
      );
    const highest = Math.max(...levels);
    // No sliver of a step at the end.
    const steps = Math.ceil(most / (least * 2 ** highest) - 1e-9);
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
