import { describe, expect, it } from 'vitest';
import { surfaceFit, termsUpTo } from '../../src/numerics/responseSurface.ts';
import { sobolPoints } from '../../src/numerics/sobol.ts';

function pointsIn(inputs: number, count: number, seed: number): readonly Float64Array[] {
  const points = sobolPoints(count, inputs, seed);
  return Array.from({ length: count }, (_, i) =>
    Float64Array.from({ length: inputs }, (_, d) => 2 * points.at(i, d) - 1),
  );
}

describe('a response surface', () => {
  it.each([
    [1, 3, 4],
    [3, 2, 10],
    [4, 3, 35],
  ])('of %i inputs to degree %i has %i terms', (inputs, degree, count) => {
    expect(termsUpTo(degree, inputs)).toHaveLength(count);
  });

  it('is exact for a polynomial of its degree', () => {
    const f = ([x, y, z]: ArrayLike<number> & Iterable<number>): number =>
      1 + 2 * x! - y! * z! + 0.5 * x! * x! * z! - 3 * y! ** 3;
    const points = pointsIn(3, 40, 1);
    const surface = surfaceFit(points, termsUpTo(3, 3))!.fit(points.map(f));
    for (const point of pointsIn(3, 20, 9)) expect(surface.at(point)).toBeCloseTo(f(point), 11);
  });

  it('comes nearer to a smooth function as its degree grows', () => {
    const f = ([x, y]: ArrayLike<number> & Iterable<number>): number => Math.exp(0.5 * x! - 0.3 * y!);
    const points = pointsIn(2, 60, 2);
    const fresh = pointsIn(2, 50, 8);
    const errors = [1, 2, 3, 4].map((degree) => {
      const surface = surfaceFit(points, termsUpTo(degree, 2))!.fit(points.map(f));
      return Math.max(...fresh.map((point) => Math.abs(surface.at(point) - f(point))));
    });
    for (let i = 1; i < errors.length; i++) expect(errors[i]!).toBeLessThan(0.35 * errors[i - 1]!);
  });

  it('does not pretend: too few points, or points that cannot tell the terms apart', () => {
    expect(surfaceFit(pointsIn(2, 5, 1), termsUpTo(2, 2))).toBeNull();
    const onALine = pointsIn(1, 20, 1).map(([x]) => [x!, x!]);
    expect(surfaceFit(onALine, termsUpTo(1, 2))).toBeNull();
  });
});
