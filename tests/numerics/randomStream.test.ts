import { describe, expect, it } from 'vitest';
import { randomStream } from '../../src/numerics/randomStream.ts';

describe('a random stream', () => {
  const count = 20_000;
  const draw = (seed: number): readonly number[] => {
    const next = randomStream(seed);
    return Array.from({ length: count }, next);
  };

  it('is even and without memory, within four standard errors', () => {
    const values = draw(5);
    const mean = values.reduce((sum, x) => sum + x, 0) / count;
    expect(Math.abs(mean - 0.5)).toBeLessThan(4 * Math.sqrt(1 / 12 / count));
    const product = values.slice(1).reduce((sum, x, i) => sum + (x - 0.5) * (values[i]! - 0.5), 0) / count;
    expect(Math.abs(product)).toBeLessThan((4 / 12) * Math.sqrt(1 / count));
  });

  it('repeats for a seed and differs between seeds', () => {
    expect(draw(1).slice(0, 5)).toEqual(draw(1).slice(0, 5));
    expect(draw(1).slice(0, 5)).not.toEqual(draw(2).slice(0, 5));
  });
});
