/** The threshold is that of WCAG 2.2, "general flash and red flash thresholds" (W3C Recommendation, 2023). */

import { describe, expect, it } from 'vitest';
import { flashMeter } from '../../../src/telling/clips/flashMeter.ts';
import { frameRateOf } from '../../../src/telling/clips/frameRate.ts';

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
    const meter = flashMeter(rate, [255, 255, 255]);
    for (let n = 0; n < 24; n++) {
      const rgba = new Uint8ClampedArray(4 * width * height);
      if (n % 4 < 2) rgba.fill(255);
      meter.add(rgba, width, height);
    }
    expect(meter.verdict().mostFlashes).toBe(0);
  });
});
