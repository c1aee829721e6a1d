/** Opposing changes counted in each cell, over any second and any field of 10 degrees. */

import { CELLS } from './cellLights.ts';
import type { FlashVerdict } from './flashVerdict.ts';
import type { FrameRate } from './frameRate.ts';

const { across: ACROSS, down: DOWN } = CELLS;
/** More opposing changes than this within a second are more than three flashes. */
const MOST_CHANGES = 6;
/** Share of the 10 degree field. */
const LARGEST_AREA = 0.25;
/** The 10 degree field in cells. */
const FIELD = { across: ACROSS / 3, down: DOWN / 3 } as const;

export interface ChangeCount {
  /** The next frame: which cells have changed with it. */ frame(hasChanged: (cell: number) => boolean): void;
  verdict(): FlashVerdict;
}

export function changeCount(rate: FrameRate): ChangeCount {
  const cells = ACROSS * DOWN;
  const changes: number[][] = Array.from({ length: cells }, () => []);
  const within = rate.num / rate.den;
  let frame = 0;
  let mostFlashes = 0;
  let at: number | null = null;
  let largestArea = 0;

  function countNow(): void {
    const counts = changes.map((list) => {
      while (list.length > 0 && (list[0] as number) <= frame - within) list.shift();
      return list.length;
    });
    const area = areaWith(counts, (count) => count > MOST_CHANGES);
    if (area > largestArea) largestArea = area;
    for (let count = Math.max(...counts); count / 2 > mostFlashes; count--) {
      const least = count;
      if (areaWith(counts, (other) => other >= least) < LARGEST_AREA) continue;
      mostFlashes = count / 2;
      at = (frame * rate.den) / rate.num;
    }
  }

  return {
    frame(hasChanged) {
      let changed = false;
      for (let cell = 0; cell < cells; cell++) {
        if (!hasChanged(cell)) continue;
        (changes[cell] as number[]).push(frame);
        changed = true;
      }
      if (changed) countNow();
      frame += 1;
    },
    verdict: () => ({ passes: largestArea < LARGEST_AREA, mostFlashes, at, largestArea }),
  };
}

/** Largest share of any 10 degree field whose cells are meant. */
function areaWith(counts: readonly number[], isMeant: (count: number) => boolean): number {
  // Sums over all cells above and to the left, so that any field is four look-ups.
  const sums = new Int32Array((ACROSS + 1) * (DOWN + 1));
  for (let row = 0; row < DOWN; row++)
    for (let column = 0; column < ACROSS; column++)
      sums[(row + 1) * (ACROSS + 1) + column + 1] =
        (sums[row * (ACROSS + 1) + column + 1] as number) +
        (sums[(row + 1) * (ACROSS + 1) + column] as number) -
        (sums[row * (ACROSS + 1) + column] as number) +
        (isMeant(counts[row * ACROSS + column] as number) ? 1 : 0);
  let most = 0;
  for (let top = 0; top + FIELD.down <= DOWN; top++)
    for (let left = 0; left + FIELD.across <= ACROSS; left++) {
      const [below, right] = [top + FIELD.down, left + FIELD.across];
      const sum =
        (sums[below * (ACROSS + 1) + right] as number) -
        (sums[top * (ACROSS + 1) + right] as number) -
        (sums[below * (ACROSS + 1) + left] as number) +
        (sums[top * (ACROSS + 1) + left] as number);
      if (sum > most) most = sum;
    }
  return most / (FIELD.across * FIELD.down);
}
