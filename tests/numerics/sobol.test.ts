import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { normalQuantile } from '../../src/numerics/normalQuantile.ts';
import { MOST_SOBOL_DIMENSIONS, sobolPoints } from '../../src/numerics/sobol.ts';
import { SOBOL_DIRECTIONS } from '../../src/numerics/sobolDirections.ts';

/** SciPy's sequence and quantiles; see scripts/reference/make_sampling_reference.py. */
const reference = JSON.parse(
  readFileSync(new URL('../reference/sampling-reference.json', import.meta.url), 'utf8'),
) as {
  dimensions: number;
  points: { index: number; point: number[] }[];
  normalQuantiles: { chance: number; quantile: number }[];
};

describe('Sobol points', () => {
  it('are those of SciPy in all dimensions', () => {
    const points = sobolPoints(1024, reference.dimensions, null);
    for (const { index, point } of reference.points) {
      expect(point.map((_, d) => points.at(index, d))).toEqual(point);
    }
  });

  it('come from primitive polynomials and odd first numbers', () => {
    const orderOf = (polynomial: number, degree: number): number => {
      let power = 1;
      for (let order = 1; ; order++) {
        power <<= 1;
        if (power >> degree) power ^= polynomial;
        if (power === 1) return order;
        if (power === 0 || order > 2 ** degree) return 0;
      }
    };
    const polynomials = SOBOL_DIRECTIONS.map(([polynomial]) => polynomial);
    expect(new Set(polynomials).size).toBe(MOST_SOBOL_DIMENSIONS);
    for (const [polynomial, start] of SOBOL_DIRECTIONS.slice(1)) {
      const degree = 31 - Math.clz32(polynomial);
      // Powers of x run through everything but 0: that is what primitive means.
      expect(orderOf(polynomial, degree)).toBe(2 ** degree - 1);
      expect(start).toHaveLength(degree);
      start.forEach((m, i) => {
        expect(m % 2).toBe(1);
        expect(m).toBeLessThan(2 ** (i + 1));
      });
    }
  });

  it.each([null, 1, 77])('fall once into each interval of every coordinate, seed %s', (seed) => {
    const count = 256;
    const points = sobolPoints(count, MOST_SOBOL_DIMENSIONS, seed);
    for (let d = 0; d < MOST_SOBOL_DIMENSIONS; d++) {
      const seen = new Set(Array.from({ length: count }, (_, i) => Math.floor(points.at(i, d) * count)));
      expect(seen.size).toBe(count);
    }
  });

  it('stay a net in two dimensions when scrambled: each of 16 by 16 boxes has one of 256', () => {
    const points = sobolPoints(256, 2, 5);
    const boxes = new Set(
      Array.from(
        { length: 256 },
        (_, i) => Math.floor(points.at(i, 0) * 16) * 16 + Math.floor(points.at(i, 1) * 16),
      ),
    );
    expect(boxes.size).toBe(256);
  });

  it('differ from seed to seed, are the same for one, and keep off 0 and 1', () => {
    const [a, b, again] = [3, 4, 3].map((seed) => sobolPoints(8, 3, seed));
    expect(a!.at(5, 2)).toBe(again!.at(5, 2));
    expect(a!.at(5, 2)).not.toBe(b!.at(5, 2));
    expect(a!.at(0, 0)).toBeGreaterThan(0);
    expect(() => sobolPoints(8, MOST_SOBOL_DIMENSIONS + 1, 1)).toThrow(RangeError);
  });

  it('of many seeds are uniform: means and squares of one point are those of the unit interval', () => {
    // 4000 scramblings of point 5: standard errors 0.0046 and 0.0047, bounds at four of them.
    const values = Array.from({ length: 4000 }, (_, seed) => sobolPoints(8, 2, seed).at(5, 1));
    const mean = values.reduce((sum, x) => sum + x, 0) / values.length;
    const square = values.reduce((sum, x) => sum + x * x, 0) / values.length;
    expect(Math.abs(mean - 1 / 2)).toBeLessThan(0.019);
    expect(Math.abs(square - 1 / 3)).toBeLessThan(0.019);
  });
});

describe('the normal quantile', () => {
  it('is that of SciPy to 1e-14', () => {
    for (const { chance, quantile } of reference.normalQuantiles) {
      expect(Math.abs(normalQuantile(chance) - quantile)).toBeLessThan(
        1e-14 * Math.max(1, Math.abs(quantile)),
      );
    }
  });

  it('has none outside', () => {
    for (const chance of [0, 1, -1, Number.NaN]) expect(() => normalQuantile(chance)).toThrow(RangeError);
  });
});
