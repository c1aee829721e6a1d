import { describe, expect, test } from 'vitest';
import { solveDenseInto } from '../../src/numerics/denseSolve.ts';
import { type Random, randomFrom } from '../campaigns/random.ts';

/** Invented systems with a known answer: diagonally heavy, so that their condition is mild whatever the row scales. */
function randomSystem(random: Random, size: number, stride: number, rights: number, farthestScale: number) {
  const wanted = Array.from({ length: rights }, () =>
    Float64Array.from({ length: size }, () => random.between(-2, 2)),
  );
  const system = new Float64Array(size * stride);
  for (let r = 0; r < size; r++) {
    const scale = 10 ** random.between(-farthestScale, farthestScale);
    for (let c = 0; c < size; c++) {
      const value = random.between(-1, 1) + (r === c ? size : 0);
      system[r * stride + c] = scale * value;
      wanted.forEach((x, b) => {
        system[r * stride + size + b]! += scale * value * x[c]!;
      });
    }
  }
  return { system, wanted };
}

describe('the dense solver', () => {
  test('gives back the vectors that made the right-hand sides, badly scaled rows and spare columns included', () => {
    for (let seed = 1; seed <= 300; seed++) {
      const random = randomFrom(seed);
      const size = 1 + Math.floor(random.between(0, 12));
      const rights = 1 + Math.floor(random.between(0, 3));
      const stride = size + rights + 2;
      const { system, wanted } = randomSystem(random, size, stride, rights, 12);
      const x = new Float64Array(size * rights);
      expect(solveDenseInto(x, system, size, stride, rights)).toBe(true);
      wanted.forEach((vector, b) => {
        vector.forEach((value, r) => {
          // The sums of the right-hand sides are rounded at 1e-16 of some twenty; the diagonal keeps that small.
          expect(Math.abs(x[b * size + r]! - value), `seed ${seed}`).toBeLessThan(1e-13);
        });
      });
    }
  });

  test('exchanges rows where the diagonal is zero', () => {
    // y = 3, x + y = 5.
    const system = Float64Array.from([0, 1, 3, 1, 1, 5]);
    const x = new Float64Array(2);
    expect(solveDenseInto(x, system, 2, 3)).toBe(true);
    expect([...x]).toEqual([2, 3]);
  });

  test.each([
    ['a row of zeros', [0, 0, 1, 1, 2, 3], 2],
    ['a column of zeros', [0, 1, 1, 0, 2, 3], 2],
    ['a row that repeats another', [1, 2, 1, 2, 4, 3], 2],
    ['a column that is the sum of two', [1, 1, 2, 0, 0, 1, 1, 0, 1, 0, 1, 0], 3],
    ['a number that is none', [Number.NaN, 1, 1, 1, 2, 3], 2],
  ] as const)('says that %s has no answer', (_, numbers, size) => {
    expect(solveDenseInto(new Float64Array(size), Float64Array.from(numbers), size, size + 1)).toBe(false);
  });
});
