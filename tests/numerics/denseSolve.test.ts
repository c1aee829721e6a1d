import { describe, expect, test } from 'vitest';
import { findBracketedRoot } from '../../src/numerics/bracketedRoot.ts';
import { solveDenseInto } from '../../src/numerics/denseSolve.ts';
import { randomFrom } from '../campaigns/random.ts';

describe('the dense solver', () => {
  test('gives back the vector that made the right-hand side, badly scaled rows included', () => {
    for (let seed = 1; seed <= 200; seed++) {
      const random = randomFrom(seed);
      const size = 1 + Math.floor(random.between(0, 8));
      const stride = size + 3;
      const wanted = Float64Array.from({ length: size }, () => random.between(-2, 2));
      const system = new Float64Array(size * stride);
      for (let r = 0; r < size; r++) {
        const scale = 10 ** random.between(-12, 12);
        let sum = 0;
        for (let c = 0; c < size; c++) {
          const value = random.between(-1, 1) + (r === c ? 2 : 0);
          system[r * stride + c] = scale * value;
          sum += value * wanted[c]!;
        }
        system[r * stride + size] = scale * sum;
      }
      const x = new Float64Array(size);
      expect(solveDenseInto(x, system, size, stride)).toBe(true);
      for (let r = 0; r < size; r++) expect(Math.abs(x[r]! - wanted[r]!), `seed ${seed}`).toBeLessThan(1e-11);
    }
  });

  test('says when the system is singular', () => {
    const system = Float64Array.from([0, 0, 1, 1, 2, 3]);
    expect(solveDenseInto(new Float64Array(2), system, 2, 3)).toBe(false);
  });
});

describe('the bracketed root', () => {
  test.each([
    ['cos x = x', (x: number) => Math.cos(x) - x, 0, 1, 0.7390851332151607],
    ['x³ = 2', (x: number) => x ** 3 - 2, 0, 2, 1.2599210498948732],
    ['a steep one', (x: number) => Math.tanh(50 * (x - 0.3)), 0, 1, 0.3],
  ] as const)('%s', (_, f, from, to, root) => {
    const found = findBracketedRoot(f, from, to, { valueTolerance: 1e-15, widthTolerance: 1e-15 });
    expect(Math.abs(found.root - root)).toBeLessThan(1e-12);
  });

  test('refuses ends that hold no root', () => {
    expect(() =>
      findBracketedRoot((x) => x * x + 1, -1, 1, { valueTolerance: 0, widthTolerance: 1e-9 }),
    ).toThrow(RangeError);
  });
});
