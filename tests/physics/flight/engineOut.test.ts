import { describe, expect, it } from 'vitest';
import { chanceOfSuccess, thrustShareLeft } from '../../../src/physics/flight/engineOut.ts';

/** By going through every pattern of working, harmlessly failed and burst engines: another road to the same chance. */
function byEveryPattern(n: number, k: number, p: number, c: number): number {
  let sum = 0;
  for (let pattern = 0; pattern < 3 ** n; pattern++) {
    let chance = 1;
    let out = 0;
    let burst = false;
    for (let i = 0, rest = pattern; i < n; i++, rest = Math.floor(rest / 3)) {
      if (rest % 3 === 0) chance *= p;
      else if (rest % 3 === 1) {
        chance *= (1 - p) * (1 - c);
        out += 1;
      } else {
        chance *= (1 - p) * c;
        burst = true;
      }
    }
    if (!burst && out <= k) sum += chance;
  }
  return sum;
}

describe('chance of success of several engines', () => {
  it.each([
    { n: 1, k: 0, p: 0.99, c: 0.1 },
    { n: 5, k: 1, p: 0.98, c: 0.2 },
    { n: 9, k: 2, p: 0.95, c: 0.3 },
    { n: 8, k: 8, p: 0.9, c: 0 },
  ])('is that over all patterns for $n engines, $k out', ({ n, k, p, c }) => {
    const chance = chanceOfSuccess({ engines: n, allowedOut: k, each: p, uncontained: c });
    expect(chance).toBeCloseTo(byEveryPattern(n, k, p, c), 12);
  });

  it('falls with the number where none may fail, and may rise where one may', () => {
    const none = (engines: number): number =>
      chanceOfSuccess({ engines, allowedOut: 0, each: 0.99, uncontained: 0.1 });
    expect(none(9)).toBeLessThan(none(5));
    const one = (engines: number): number =>
      chanceOfSuccess({ engines, allowedOut: 1, each: 0.99, uncontained: 0.1 });
    expect(one(5)).toBeGreaterThan(none(1));
  });

  it('refuses what cannot be', () => {
    expect(() => chanceOfSuccess({ engines: 2.5, allowedOut: 0, each: 0.9, uncontained: 0 })).toThrow(
      'whole',
    );
    expect(() => chanceOfSuccess({ engines: 2, allowedOut: 3, each: 0.9, uncontained: 0 })).toThrow('whole');
    expect(() => chanceOfSuccess({ engines: 2, allowedOut: 0, each: 1.2, uncontained: 0 })).toThrow(
      'between',
    );
    expect(thrustShareLeft(9, 1)).toBeCloseTo(8 / 9, 12);
    expect(() => thrustShareLeft(3, 4)).toThrow('no stage');
  });
});
