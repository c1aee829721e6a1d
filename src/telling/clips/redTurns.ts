/**
 * Changes to and from a saturated red, by the working definition that WCAG 2.2 gives of a red flash: of two states one has
 *
 *   R / (R + G + B) ≥ 0.8
 *
 * R, G, B linear light, and they lie more than 0.2 apart in the CIE 1976 UCS chromaticity diagram,
 *
 *   u′ = 4 X / (X + 15 Y + 3 Z),  v′ = 9 Y / (X + 15 Y + 3 Z)
 *
 * with X, Y, Z of the primaries of sRGB (IEC 61966-2-1). What is darker than {@link DARK} of the brightest red has no colour
 * that could be seen: it is taken as grey. From memory.
 */

import { type CellLights, newCellLights } from './cellLights.ts';

const RED_SHARE = 0.8;
const APART = 0.2;
/** Linear light. */
const DARK = 0.01;
/** u′, v′ of the white of sRGB (D65), and of its red. */
const GREY = [0.1978, 0.4683] as const;
const REDDEST = [0.4507, 0.5229] as const;

type Chromaticity = readonly [u: number, v: number];

const distance = ([u, v]: Chromaticity, [u2, v2]: Chromaticity): number => Math.hypot(u - u2, v - v2);

export function chromaticityOf(red: number, green: number, blue: number): Chromaticity {
  if (Math.max(red, green, blue) < DARK) return GREY;
  const x = 0.4124 * red + 0.3576 * green + 0.1805 * blue;
  const y = 0.2126 * red + 0.7152 * green + 0.0722 * blue;
  const z = 0.0193 * red + 0.1192 * green + 0.9505 * blue;
  const sum = x + 15 * y + 3 * z;
  return [(4 * x) / sum, (9 * y) / sum];
}

const isRed = (red: number, green: number, blue: number): boolean =>
  red >= DARK && red >= RED_SHARE * (red + green + blue);

/** Whether a cell has turned red with this frame, or away from it. */
export function redTurns(): (cell: number, lights: CellLights) => boolean {
  const cells = newCellLights().red.length;
  /** 1 red, 0 not; −1 before the first frame. */
  const was = new Int8Array(cells).fill(-1);
  /** The state to be left: the reddest of a red spell, the least red of another. */
  const u = new Float64Array(cells);
  const v = new Float64Array(cells);
  return (cell, { red, green, blue }) => {
    const light = [red[cell] as number, green[cell] as number, blue[cell] as number] as const;
    const now = chromaticityOf(...light);
    const reds = isRed(...light) ? 1 : 0;
    const before: Chromaticity = [u[cell] as number, v[cell] as number];
    const keep = (): void => {
      [u[cell], v[cell]] = now;
      was[cell] = reds;
    };
    if (was[cell] === -1) {
      keep();
      return false;
    }
    if (reds !== was[cell]) {
      if (distance(before, now) <= APART) return false;
      keep();
      return true;
    }
    const nearer = distance(now, REDDEST) < distance(before, REDDEST);
    if (nearer === (reds === 1)) keep();
    return false;
  };
}
