import { describe, expect, it } from 'vitest';
import { orderedAt } from '../../src/numerics/orderedAt.ts';
import { randomStream } from '../../src/numerics/randomStream.ts';

describe('a number at its place in order', () => {
  it.each([1, 2, 3, 10, 257, 1024])('is that of the sorted list of %i numbers', (count) => {
    const chance = randomStream(count);
    const values = Float64Array.from({ length: count }, chance);
    const sorted = values.slice().sort();
    for (let place = 0; place < count; place += Math.max(1, count >> 4)) {
      expect(orderedAt(values.slice(), place)).toBe(sorted[place]);
    }
  });

  it('parts the list: none before is larger, none behind smaller', () => {
    const chance = randomStream(5);
    const values = Float64Array.from({ length: 500 }, () => Math.floor(20 * chance()));
    const sorted = values.slice().sort();
    const low = orderedAt(values, 12);
    const high = orderedAt(values, 487, 12);
    expect([low, high]).toEqual([sorted[12], sorted[487]]);
    expect(Math.max(...values.slice(0, 12))).toBeLessThanOrEqual(low);
    expect(Math.min(...values.slice(488))).toBeGreaterThanOrEqual(high);
    expect([...values].sort((a, b) => a - b)).toEqual([...sorted]);
  });

  it('needs no more than a moment where all are equal, or in order already', () => {
    expect(orderedAt(new Float64Array(5000).fill(3), 4000)).toBe(3);
    expect(
      orderedAt(
        Float64Array.from({ length: 5000 }, (_, i) => i),
        4000,
      ),
    ).toBe(4000);
    expect(
      orderedAt(
        Float64Array.from({ length: 5000 }, (_, i) => -i),
        0,
      ),
    ).toBe(-4999);
  });
});
