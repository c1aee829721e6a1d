import { describe, expect, test } from 'vitest';
import { findBracketedRoot } from '../../src/numerics/bracketedRoot.ts';
import { randomFrom } from '../campaigns/random.ts';

const sharp = { valueTolerance: 1e-15, widthTolerance: 1e-15 };

describe('the bracketed root', () => {
  // Closed forms; the fixed point of the cosine to 16 digits is on every pocket calculator.
  test.each([
    ['cos x = x', (x: number) => Math.cos(x) - x, 0, 1, 0.7390851332151607],
    ['x³ = 2', (x: number) => x ** 3 - 2, 0, 2, Math.cbrt(2)],
    ['eˣ = 10', (x: number) => Math.exp(x) - 10, -5, 40, Math.log(10)],
    ['a steep one', (x: number) => Math.tanh(50 * (x - 0.3)), 0, 1, 0.3],
    ['a flat one', (x: number) => (x - 0.3) ** 5, -1, 2, 0.3],
    ['ends the other way round', (x: number) => x * x - 3, 4, 0, Math.sqrt(3)],
  ] as const)('%s', (name, f, from, to, root) => {
    const found = findBracketedRoot(f, from, to, sharp);
    expect(found.converged).toBe(true);
    // Within |f| < 1e-15 the fifth power cannot tell points closer than 1e-3 from each other.
    expect(Math.abs(found.root - root)).toBeLessThan(name === 'a flat one' ? 1e-3 : 1e-14 * (1 + root));
  });

  test('300 random cubics of one root, wherever the bracket lies', () => {
    for (let seed = 1; seed <= 300; seed++) {
      const random = randomFrom(seed);
      const root = random.between(-5, 5);
      const width = random.between(0.1, 10);
      const f = (x: number): number => (x - root) * ((x - root) ** 2 + width);
      const found = findBracketedRoot(
        f,
        root - random.between(0.01, 20),
        root + random.between(0.01, 20),
        sharp,
      );
      expect(found.converged, `seed ${seed}`).toBe(true);
      // |f| = 1e-15 at a slope of `width`, or the last digits of x.
      expect(Math.abs(found.root - root), `seed ${seed}`).toBeLessThan(1e-15 / width + 4e-15);
    }
  });

  test('goes to a jump through zero and stays inside the bracket', () => {
    let least = 1;
    let most = 0;
    const found = findBracketedRoot(
      (x) => {
        least = Math.min(least, x);
        most = Math.max(most, x);
        return x < 0.7 ? -3 : 0.001;
      },
      0,
      1,
      { valueTolerance: 0, widthTolerance: 1e-12 },
    );
    expect(found.converged).toBe(true);
    expect(Math.abs(found.root - 0.7)).toBeLessThan(2e-12);
    expect(least).toBe(0);
    expect(most).toBe(1);
  });

  test('takes an end that is the root, and the first point that it is told', () => {
    expect(findBracketedRoot((x) => x - 2, 2, 5, sharp)).toMatchObject({ root: 2, steps: 1 });
    expect(findBracketedRoot((x) => x - 5, 2, 5, sharp)).toMatchObject({ root: 5, steps: 2 });
    const told = findBracketedRoot((x) => Math.exp(x) - Math.E, -30, 30, { ...sharp, start: 1 });
    expect(told).toMatchObject({ root: 1, steps: 3 });
  });

  test('says when its steps did not suffice', () => {
    const found = findBracketedRoot((x) => Math.tanh(1e6 * (x - 0.31)), 0, 1, { ...sharp, maxSteps: 5 });
    expect(found.converged).toBe(false);
    expect(found.steps).toBe(5);
  });

  test.each([
    ['ends that hold no root', (x: number) => x * x + 1, /no sign change/],
    ['a value that is no number', (x: number) => (x === 0 ? Number.NaN : x), /no finite value at 0/],
    ['an end at infinity', (x: number) => Math.log(x), /no finite value/],
  ] as const)('refuses %s', (_, f, words) => {
    const from = words.source.includes('sign') ? -1 : 0;
    expect(() => findBracketedRoot(f, from, 1, sharp)).toThrow(RangeError);
    expect(() => findBracketedRoot(f, from, 1, sharp)).toThrow(words);
  });
});
