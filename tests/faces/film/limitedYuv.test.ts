import { describe, expect, it } from 'vitest';
import { planesSize, writePlanes } from '../../../src/faces/film/page/limitedYuv.ts';

/** Y, Cb, Cr of a 2 by 2 picture of these pixels. */
function planes(pixels: readonly (readonly [number, number, number, number])[], alpha = false): number[] {
  const out = new Uint8Array(planesSize(2, 2, alpha));
  writePlanes(out, Uint8ClampedArray.from(pixels.flat()), 2, 2, alpha);
  return [...out];
}
const flat = (r: number, g: number, b: number): number[] => {
  const [y, , , , cb, cr] = planes(Array.from({ length: 4 }, () => [r, g, b, 255] as const));
  return [y!, cb!, cr!];
};

describe('planes for film', () => {
  /** 100 % colour bars by ITU-R BT.709-6, items 3.2 to 3.5, 8 bits: Y = 16 + 219 E'Y, C = 128 + 224 E'C, rounded. */
  it.each([
    ['white', [255, 255, 255], [235, 128, 128]],
    ['yellow', [255, 255, 0], [219, 16, 138]],
    ['cyan', [0, 255, 255], [188, 154, 16]],
    ['green', [0, 255, 0], [173, 42, 26]],
    ['magenta', [255, 0, 255], [78, 214, 230]],
    ['red', [255, 0, 0], [63, 102, 240]],
    ['blue', [0, 0, 255], [32, 240, 118]],
    ['black', [0, 0, 0], [16, 128, 128]],
  ] as const)('%s is as the standard has it', (_, [r, g, b], expected) => {
    expect(flat(r, g, b)).toEqual([...expected]);
  });

  it('are the same for four equal pixels and for four nearly equal ones, to one step', () => {
    for (let i = 0; i < 200; i++) {
      const [r, g, b] = [(37 * i) % 255, (91 * i) % 255, (53 * i) % 255];
      const even = flat(r, g, b);
      const [y, , , , cb, cr] = planes([
        [r, g, b, 255],
        [r, g, b, 255],
        [r, g, b, 255],
        [r + 1, g, b, 255],
      ]);
      for (const [k, value] of [y!, cb!, cr!].entries())
        expect(Math.abs(value - even[k]!)).toBeLessThanOrEqual(1);
    }
  });

  it('keep the alpha, and take no colour from pixels that do not show', () => {
    const out = planes(
      [
        [255, 0, 0, 255],
        [0, 0, 255, 0],
        [0, 0, 255, 0],
        [0, 0, 255, 0],
      ],
      true,
    );
    expect(out.slice(4, 6)).toEqual([102, 240]);
    expect(out.slice(6)).toEqual([255, 0, 0, 0]);
  });
});
