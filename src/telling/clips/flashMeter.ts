/**
 * Counts flashes in a film, by the general flash and red flash thresholds of WCAG 2.2 (success criterion 2.3.1 and its
 * definition of "general flash and red flash thresholds"; W3C Recommendation, 2023).
 *
 * A flash is a pair of opposing changes in relative luminance of 10 % or more of the largest (white), where the darker of
 * the two is below 0.80. A red flash is a pair of opposing changes to and from a saturated red (`redTurns.ts`). A film is
 * within the threshold when in any one second there are no more than three flashes of either sort on
 * areas that together take no more than 25 % of any 10 degrees of the visual field: on a screen that the film fills, of
 * any rectangle of a third of its width by a third of its height (341 × 256 of 1024 × 768).
 *
 * Stricter than the text in two ways: half a flash beyond three fails too (seven opposing changes), and places count
 * together when each flashes within the same second, at once or not. Means over small cells: finer flicker is not seen by it.
 */

import { type CellLights, cellLights, luminanceOf, newCellLights, type Rgb } from './cellLights.ts';
import { type ChangeCount, changeCount } from './changeCount.ts';
import type { FlashVerdict } from './flashVerdict.ts';
import type { FrameRate } from './frameRate.ts';
import { redTurns } from './redTurns.ts';

/** Change of relative luminance that counts. */
const CHANGE = 0.1;
/** The darker of the two must be below this. */
const DARKER_BELOW = 0.8;

export interface FlashMeter {
  /** The next frame: straight RGBA, row by row. */
  add(rgba: Uint8Array | Uint8ClampedArray, width: number, height: number): void;
  verdict(): FlashVerdict;
}

const WHITE: Rgb = [255, 255, 255];
const BLACK: Rgb = [0, 0, 0];

/** What may lie under a film: nobody knows under a transparent one, so it is watched over the darkest and the brightest. */
export const groundsUnder = (transparent: boolean): readonly Rgb[] =>
  transparent ? [WHITE, BLACK] : [WHITE];

/** @param grounds straight colours under what is transparent; the worst over all of them counts */
export function flashMeter(rate: FrameRate, grounds: readonly Rgb[] = [WHITE]): FlashMeter {
  const meters = grounds.map((ground) => overGround(rate, ground));
  return {
    add(rgba, width, height) {
      for (const meter of meters) meter.add(rgba, width, height);
    },
    verdict: () => worstOf(meters.map((meter) => meter.verdict())),
  };
}

function worstOf(all: readonly FlashVerdict[]): FlashVerdict {
  const [first, ...rest] = all as readonly [FlashVerdict, ...FlashVerdict[]];
  return rest.reduce((worst, one) => {
    const most = one.mostFlashes > worst.mostFlashes ? one : worst;
    return {
      passes: worst.passes && one.passes,
      mostFlashes: most.mostFlashes,
      at: most.at,
      largestArea: Math.max(worst.largestArea, one.largestArea),
    };
  }, first);
}

function overGround(rate: FrameRate, ground: Rgb): FlashMeter {
  const lights = newCellLights();
  const turns = [luminanceTurns(), redTurns()];
  const counts: readonly ChangeCount[] = turns.map(() => changeCount(rate));
  return {
    add(rgba, width, height) {
      cellLights(lights, rgba, width, height, ground);
      turns.forEach((turned, i) => {
        counts[i]!.frame((cell) => turned(cell, lights));
      });
    },
    verdict: () => worstOf(counts.map((count) => count.verdict())),
  };
}

/** Whether the luminance of a cell has turned with this frame, by enough. */
function luminanceTurns(): (cell: number, lights: CellLights) => boolean {
  const cells = newCellLights().red.length;
  /** Which way the luminance went last: +1, −1; 0 before the first change. */
  const way = new Int8Array(cells);
  /** Extremes since then: where a change back would begin. */
  const highest = new Float64Array(cells).fill(Number.NEGATIVE_INFINITY);
  const lowest = new Float64Array(cells).fill(Number.POSITIVE_INFINITY);
  return (cell, lights) => {
    const luminance = luminanceOf(lights, cell);
    const [low, high] = [lowest[cell] as number, highest[cell] as number];
    const rises = way[cell] !== 1 && luminance - low >= CHANGE && low < DARKER_BELOW;
    const falls = way[cell] !== -1 && high - luminance >= CHANGE && luminance < DARKER_BELOW;
    if (rises || falls) {
      way[cell] = rises ? 1 : -1;
      lowest[cell] = luminance;
      highest[cell] = luminance;
      return true;
    }
    if (luminance < low) lowest[cell] = luminance;
    if (luminance > high) highest[cell] = luminance;
    return false;
  };
}
