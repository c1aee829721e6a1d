/** Bands of functions whose bounds are known in closed form. */
import { describe, expect, test } from 'vitest';
import { bandsWithin, common } from '../../../src/answer/published/bands.ts';

const grid = Array.from({ length: 21 }, (_, i) => i / 2);

describe('where a value stays between two bounds', () => {
  test('rising: one band between the two roots', () => {
    const [band, ...more] = bandsWithin((x) => x * x, grid, 20, 30);
    expect(more).toEqual([]);
    expect(band!.low).toBeCloseTo(Math.sqrt(20), 5);
    expect(band!.high).toBeCloseTo(Math.sqrt(30), 5);
  });

  test('rising and falling: two bands', () => {
    const bands = bandsWithin((x) => x * (10 - x), grid, 9, 16);
    // x² − 10 x + c = 0 for c = 9 and 16: 1, 9 and 2, 8.
    expect(bands.map(({ low, high }) => [low, high].map((x) => Math.round(x * 1e4) / 1e4))).toEqual([
      [1, 2],
      [8, 9],
    ]);
  });

  test('a top between two points that just reaches the band is found', () => {
    const top = 5.21;
    const [band] = bandsWithin((x) => 1 - (x - top) ** 2, grid, 0.999, 2);
    expect(band!.low).toBeCloseTo(top - Math.sqrt(0.001), 3);
    expect(band!.high).toBeCloseTo(top + Math.sqrt(0.001), 3);
  });

  test('a band ends where the value ceases to exist', () => {
    const [band] = bandsWithin((x) => (x < 3.3 ? x : null), grid, 2, 9);
    expect(band!.low).toBeCloseTo(2, 5);
    // Halved eight times from a step of one half.
    expect(3.3 - band!.high).toBeGreaterThan(0);
    expect(3.3 - band!.high).toBeLessThan(0.5 / 250);
  });

  test('nowhere is no band', () => {
    expect(bandsWithin((x) => x, grid, 11, 12)).toEqual([]);
    expect(bandsWithin(() => null, grid, 11, 12)).toEqual([]);
  });

  test('what two sets share', () => {
    const shared = common(
      [
        { low: 0, high: 2 },
        { low: 5, high: 9 },
      ],
      [{ low: 1, high: 6 }],
    );
    expect(shared).toEqual([
      { low: 1, high: 2 },
      { low: 5, high: 6 },
    ]);
  });
});
