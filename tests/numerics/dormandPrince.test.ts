import { describe, expect, it } from 'vitest';
import { DORMAND_PRINCE, integrate } from '../../src/numerics/dormandPrince.ts';

const { nodes, stages, error, dense } = DORMAND_PRINCE;
const fifth = [...stages[6], 0];
const fourth = fifth.map((b, j) => b - error[j]!);
const sum = (terms: readonly number[]): number => terms.reduce((a, b) => a + b, 0);
const a = (i: number, j: number): number => stages[i]?.[j] ?? 0;
const times = (i: number, of: (j: number) => number): number => sum(nodes.map((_, j) => a(i, j) * of(j)));

describe('the pair of Dormand and Prince', () => {
  it('has stages at their nodes', () => {
    nodes.forEach((c, i) => {
      expect(sum([...stages[i]!])).toBeCloseTo(c, 14);
    });
  });

  // Order conditions: E. Hairer, S. P. Nørsett, G. Wanner, Solving ODEs I, 2nd ed., table II.2.1 (from memory; they follow from Taylor's series).
  const conditions = (b: readonly number[]): readonly (readonly [number, number, number])[] => {
    const of = (term: (i: number) => number): number => sum(b.map((weight, i) => weight * term(i)));
    return [
      [1, of(() => 1), 1],
      [2, of((i) => nodes[i]!), 1 / 2],
      [3, of((i) => nodes[i]! ** 2), 1 / 3],
      [3, of((i) => times(i, (j) => nodes[j]!)), 1 / 6],
      [4, of((i) => nodes[i]! ** 3), 1 / 4],
      [4, of((i) => nodes[i]! * times(i, (j) => nodes[j]!)), 1 / 8],
      [4, of((i) => times(i, (j) => nodes[j]! ** 2)), 1 / 12],
      [4, of((i) => times(i, (j) => times(j, (l) => nodes[l]!))), 1 / 24],
      [5, of((i) => nodes[i]! ** 4), 1 / 5],
      [5, of((i) => nodes[i]! ** 2 * times(i, (j) => nodes[j]!)), 1 / 10],
      [5, of((i) => times(i, (j) => nodes[j]!) ** 2), 1 / 20],
      [5, of((i) => nodes[i]! * times(i, (j) => nodes[j]! ** 2)), 1 / 15],
      [5, of((i) => times(i, (j) => nodes[j]! ** 3)), 1 / 20],
      [5, of((i) => nodes[i]! * times(i, (j) => times(j, (l) => nodes[l]!))), 1 / 30],
      [5, of((i) => times(i, (j) => nodes[j]! * times(j, (l) => nodes[l]!))), 1 / 40],
      [5, of((i) => times(i, (j) => times(j, (l) => nodes[l]! ** 2))), 1 / 60],
      [5, of((i) => times(i, (j) => times(j, (l) => times(l, (m) => nodes[m]!)))), 1 / 120],
    ];
  };

  it('meets all conditions of order five, its companion those of order four and not of five', () => {
    for (const [, left, right] of conditions(fifth)) expect(left).toBeCloseTo(right, 13);
    const four = conditions(fourth);
    for (const [order, left, right] of four) if (order <= 4) expect(left).toBeCloseTo(right, 13);
    expect(four.some(([order, left, right]) => order === 5 && Math.abs(left - right) > 1e-6)).toBe(true);
    expect(sum([...dense])).toBeCloseTo(0, 13);
  });
});

const oscillator = (_: number, y: Float64Array, slope: Float64Array): void => {
  slope[0] = y[1]!;
  slope[1] = -y[0]!;
};

describe('integration', () => {
  it.each([
    [1e-6, 1e-4],
    [1e-9, 1e-7],
    [1e-12, 1e-10],
  ])('of ten turns of an oscillator at tolerance %f keeps within %f of the cosine', (tolerance, bound) => {
    const end = 20 * Math.PI;
    const { y } = integrate(oscillator, 0, [1, 0], end, {
      relative: tolerance,
      absolute: [tolerance, tolerance],
      firstStep: 0.01,
    });
    expect(Math.abs(y[0]! - 1)).toBeLessThan(bound);
    expect(Math.abs(y[1]!)).toBeLessThan(bound);
  });

  it('between its steps is good to the fourth order of the step', () => {
    const worst = (step: number): number => {
      let largest = 0;
      const into = new Float64Array(2);
      integrate(
        oscillator,
        0,
        [1, 0],
        4,
        { relative: 1, absolute: [1, 1], firstStep: step, longestStep: step },
        (whole) => {
          const middle = whole.from + 0.37 * (whole.to - whole.from);
          whole.at(middle, into);
          largest = Math.max(largest, Math.abs(into[0]! - Math.cos(middle)));
          return undefined;
        },
      );
      return largest;
    };
    const order = Math.log2(worst(0.2) / worst(0.1));
    expect(order).toBeGreaterThan(3.8);
    expect(order).toBeLessThan(5.6);
  });

  it('goes backwards, and ends where it is told to', () => {
    const back = integrate(oscillator, 1, [Math.cos(1), -Math.sin(1)], 0, {
      relative: 1e-10,
      absolute: [1e-10, 1e-10],
      firstStep: 0.1,
    });
    expect(back.y[0]).toBeCloseTo(1, 8);
    const ended = integrate(
      oscillator,
      0,
      [1, 0],
      100,
      { relative: 1e-8, absolute: [1e-8, 1e-8], firstStep: 0.1 },
      ({ end }) => end[0]! < 0,
    );
    expect(ended.t).toBeGreaterThan(Math.PI / 2);
    expect(ended.t).toBeLessThan(Math.PI);
  });

  it('says where it cannot go on', () => {
    const options = { relative: 1e-8, absolute: [1e-8], firstStep: 0.1 };
    // y′ = y² from 1 has no value at t = 1.
    const blowUp = (_: number, y: Float64Array, slope: Float64Array): void => {
      slope[0] = y[0]! ** 2;
    };
    expect(() => integrate(blowUp, 0, [1], 2, options)).toThrow(RangeError);
    expect(() => integrate((_, __, slope) => slope.fill(Number.NaN), 0, [1], 2, options)).toThrow(
      'not finite',
    );
  });
});
