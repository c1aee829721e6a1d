/** The threshold is that of WCAG 2.2, "general flash and red flash thresholds" (W3C Recommendation, 2023). */

import { describe, expect, it } from 'vitest';
import { flashMeter, groundsUnder } from '../../../src/telling/clips/flashMeter.ts';
import { frameRateOf } from '../../../src/telling/clips/frameRate.ts';
import { chromaticityOf } from '../../../src/telling/clips/redTurns.ts';

const [width, height] = [96, 96];
const rate = frameRateOf('24');

/** A grey whose relative luminance is about the given one (sRGB, IEC 61966-2-1). */
const greyOf = (luminance: number): number =>
  Math.round(255 * (luminance <= 0.0031308 ? 12.92 * luminance : 1.055 * luminance ** (1 / 2.4) - 0.055));

/** A frame of one grey, with another in a square of `side` pixels at its corner. */
function frame(ground: number, inside: number, side: number): Uint8ClampedArray {
  const rgba = new Uint8ClampedArray(4 * width * height).fill(255);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const grey = greyOf(x < side && y < side ? inside : ground);
      rgba.set([grey, grey, grey], 4 * (y * width + x));
    }
  return rgba;
}

/** Two seconds in which a square goes between two luminances, `period` frames for there and back. */
function flashing(period: number, low: number, high: number, side: number) {
  const meter = flashMeter(rate);
  for (let n = 0; n < 48; n++) {
    const inside = n % period < period / 2 ? low : high;
    meter.add(frame(low, inside, side), width, height);
  }
  return meter.verdict();
}

describe('the flash meter', () => {
  it('lets three flashes a second pass, and fails four', () => {
    expect(flashing(8, 0, 1, width)).toMatchObject({ passes: true, mostFlashes: 3 });
    const four = flashing(6, 0, 1, width);
    expect(four).toMatchObject({ passes: false, mostFlashes: 4, largestArea: 1 });
    expect(four.at).toBeLessThan(1.1);
  });

  it('knows no flash in changes of less than a tenth of white, nor where the darker is bright', () => {
    expect(flashing(4, 0.4, 0.48, width).mostFlashes).toBe(0);
    expect(flashing(4, 0.82, 1, width).mostFlashes).toBe(0);
    expect(flashing(4, 0.7, 0.85, width).passes).toBe(false);
  });

  it('fails from a quarter of a 10 degree field on: 16 of 32 pixels either way', () => {
    expect(flashing(4, 0, 1, 14).passes).toBe(true);
    expect(flashing(4, 0, 1, 16).passes).toBe(false);
  });

  it('counts a slow rise and fall as one flash, however many steps it takes', () => {
    const meter = flashMeter(rate);
    for (let n = 0; n <= 48; n++) {
      const luminance = 1 - Math.abs(n - 24) / 24;
      meter.add(frame(luminance, luminance, 0), width, height);
    }
    // Up is one change, down the other; they are a second apart.
    expect(meter.verdict().mostFlashes).toBeLessThanOrEqual(1);
    expect(meter.verdict().passes).toBe(true);
  });

  it('sees transparent pixels over the ground it is given', () => {
    const blinking = (value: number, grounds: Parameters<typeof flashMeter>[1]) => {
      const meter = flashMeter(rate, grounds);
      for (let n = 0; n < 24; n++) {
        const rgba = new Uint8ClampedArray(4 * width * height);
        if (n % 4 < 2) for (let i = 0; i < rgba.length; i += 4) rgba.set([value, value, value, 255], i);
        meter.add(rgba, width, height);
      }
      return meter.verdict();
    };
    expect(blinking(255, [[255, 255, 255]]).mostFlashes).toBe(0);
    // Nobody knows what an edit lays below: white over white hides what black below shows, and the other way round.
    for (const value of [0, 255]) expect(blinking(value, groundsUnder(true)).passes).toBe(false);
    expect(groundsUnder(false)).toEqual([[255, 255, 255]]);
  });

  /** Two seconds between two colours, six frames there and back: four flashes a second. */
  function between(one: readonly number[], other: readonly number[], period = 6) {
    const meter = flashMeter(rate);
    for (let n = 0; n < 48; n++) {
      const rgba = new Uint8ClampedArray(4 * width * height).fill(255);
      const colour = n % period < period / 2 ? one : other;
      for (let i = 0; i < rgba.length; i += 4) rgba.set(colour, i);
      meter.add(rgba, width, height);
    }
    return meter.verdict();
  }

  it('counts changes to and from a saturated red, where the luminance hardly changes', () => {
    // Luminances of sRGB: red (180, 0, 0) 0.097, green (0, 100, 0) 0.091, blue (0, 0, 255) 0.072: no flash in light.
    expect(between([180, 0, 0], [0, 100, 0]).passes).toBe(false);
    expect(between([180, 0, 0], [0, 0, 255]).mostFlashes).toBe(4);
    expect(between([180, 0, 0], [0, 100, 0], 8).passes).toBe(true);
    // No red in either.
    expect(between([0, 0, 255], [0, 100, 0]).mostFlashes).toBe(0);
    // R / (R + G + B) of linear light is 0.74 in the first: not saturated.
    expect(between([180, 87, 70], [90, 90, 90]).mostFlashes).toBe(0);
    // Two reds that lie close to each other.
    expect(between([180, 0, 0], [150, 0, 0]).mostFlashes).toBe(0);
  });

  it('has the chromaticities of sRGB (IEC 61966-2-1: red x 0.64 y 0.33, white x 0.3127 y 0.3290)', () => {
    const uv = (x: number, y: number) => [(4 * x) / (-2 * x + 12 * y + 3), (9 * y) / (-2 * x + 12 * y + 3)];
    for (const [light, expected] of [
      [[1, 0, 0], uv(0.64, 0.33)],
      [[0, 1, 0], uv(0.3, 0.6)],
      [[0, 0, 1], uv(0.15, 0.06)],
      [[1, 1, 1], uv(0.3127, 0.329)],
      [[0, 0, 0], uv(0.3127, 0.329)],
    ] as const satisfies readonly (readonly [readonly [number, number, number], readonly number[]])[]) {
      const [u, v] = chromaticityOf(light[0], light[1], light[2]);
      // Four digits of the primaries in the matrix.
      expect(u).toBeCloseTo(expected[0]!, 3);
      expect(v).toBeCloseTo(expected[1]!, 3);
    }
  });
});
