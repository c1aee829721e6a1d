/**
 * Counts flashes in a film, by the general flash threshold of WCAG 2.2 (success criterion 2.3.1 and its definition of
 * "general flash and red flash thresholds"; W3C Recommendation, 2023).
 *
 * A flash is a pair of opposing changes in relative luminance of 10 % or more of the largest (white), where the darker of
 * the two is below 0.80. A film is within the threshold when in any one second there are no more than three flashes on
 * areas that together take no more than 25 % of any 10 degrees of the visual field: on a screen that the film fills, of
 * any rectangle of a third of its width by a third of its height (341 × 256 of 1024 × 768).
 *
 * Stricter than the text in two ways: half a flash beyond three fails too (seven opposing changes), and places count
 * together when each flashes within the same second, at once or not. Means over small cells: finer flicker is not seen by it.
 */

import type { FrameRate } from './frameRate.ts';

/** Cells across and down. */
const ACROSS = 48;
const DOWN = 48;
/** Change of relative luminance that counts. */
const CHANGE = 0.1;
/** The darker of the two must be below this. */
const DARKER_BELOW = 0.8;
/** More opposing changes than this within a second are more than three flashes. */
const MOST_CHANGES = 6;
/** Share of the 10 degree field. */
const LARGEST_AREA = 0.25;
/** The 10 degree field in cells. */
const FIELD = { across: ACROSS / 3, down: DOWN / 3 } as const;
/** About so many points are read across a cell. */
const POINTS = 5;

export interface FlashVerdict {
  readonly passes: boolean;
  /** Most flashes within a second that any quarter of a 10 degree field sees [–]; halves are single changes. */
  readonly mostFlashes: number;
  /** [s] where the second with the most flashes ends; null where nothing flashes */ readonly at:
    | number
    | null;
  /** Largest share of a 10 degree field with more than three flashes in a second [–]. */
  readonly largestArea: number;
}

export interface FlashMeter {
  /** The next frame: straight RGBA, row by row. */
  add(rgba: Uint8Array | Uint8ClampedArray, width: number, height: number): void;
  verdict(): FlashVerdict;
}

/** Relative luminance of an sRGB component as WCAG has it, by its byte. */
const LINEAR = Float64Array.from({ length: 256 }, (_, byte) => {
  const c = byte / 255;
  return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
});

/** @param ground straight colour under what is transparent */
export function flashMeter(
  rate: FrameRate,
  ground: readonly [number, number, number] = [255, 255, 255],
): FlashMeter {
  const cells = ACROSS * DOWN;
  /** Which way the luminance went last: +1, −1; 0 before the first change. */
  const way = new Int8Array(cells);
  /** Extremes since then: where a change back would begin. */
  const highest = new Float64Array(cells).fill(Number.NEGATIVE_INFINITY);
  const lowest = new Float64Array(cells).fill(Number.POSITIVE_INFINITY);
  const changes: number[][] = Array.from({ length: cells }, () => []);
  const within = rate.num / rate.den;
  const luminances = new Float64Array(cells);
  let frame = 0;
  let mostFlashes = 0;
  let at: number | null = null;
  let largestArea = 0;

  function follow(cell: number, luminance: number): boolean {
    const [low, high] = [lowest[cell] as number, highest[cell] as number];
    const rises = way[cell] !== 1 && luminance - low >= CHANGE && low < DARKER_BELOW;
    const falls = way[cell] !== -1 && high - luminance >= CHANGE && luminance < DARKER_BELOW;
    if (rises || falls) {
      way[cell] = rises ? 1 : -1;
      lowest[cell] = luminance;
      highest[cell] = luminance;
      (changes[cell] as number[]).push(frame);
      return true;
    }
    if (luminance < low) lowest[cell] = luminance;
    if (luminance > high) highest[cell] = luminance;
    return false;
  }

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
    add(rgba, width, height) {
      cellLuminances(luminances, rgba, width, height, ground);
      let changed = false;
      for (let cell = 0; cell < cells; cell++) if (follow(cell, luminances[cell] as number)) changed = true;
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

/** Mean relative luminance of each cell, from a few points of it. */
function cellLuminances(
  out: Float64Array,
  rgba: Uint8Array | Uint8ClampedArray,
  width: number,
  height: number,
  [groundRed, groundGreen, groundBlue]: readonly [number, number, number],
): void {
  for (let row = 0; row < DOWN; row++) {
    const [top, bottom] = [Math.floor((row * height) / DOWN), Math.floor(((row + 1) * height) / DOWN)];
    const down = Math.max(1, Math.floor((bottom - top) / POINTS));
    for (let column = 0; column < ACROSS; column++) {
      const left = Math.floor((column * width) / ACROSS);
      const right = Math.max(left + 1, Math.floor(((column + 1) * width) / ACROSS));
      const across = Math.max(1, Math.floor((right - left) / POINTS));
      let sum = 0;
      let points = 0;
      for (let y = top; y < Math.max(bottom, top + 1); y += down)
        for (let x = left; x < right; x += across) {
          const i = 4 * (y * width + x);
          const alpha = (rgba[i + 3] as number) / 255;
          const over = (byte: number, ground: number): number =>
            alpha === 1 ? byte : Math.round(alpha * byte + (1 - alpha) * ground);
          sum +=
            0.2126 * (LINEAR[over(rgba[i] as number, groundRed)] as number) +
            0.7152 * (LINEAR[over(rgba[i + 1] as number, groundGreen)] as number) +
            0.0722 * (LINEAR[over(rgba[i + 2] as number, groundBlue)] as number);
          points += 1;
        }
      out[row * ACROSS + column] = sum / points;
    }
  }
}
