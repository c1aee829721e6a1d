import { describe, expect, it } from 'vitest';
import { effectsOf } from '../../src/numerics/effects.ts';

const options = { count: 1024, scramblings: 8 };

describe('total effects', () => {
  // T. Ishigami, T. Homma 1990, a = 7, b = 0.1; indices in closed form.
  it('of the Ishigami function are those in closed form', () => {
    const [a, b] = [7, 0.1];
    const angle = (x: number): number => Math.PI * (2 * x - 1);
    const f = (u: Float64Array): number =>
      Math.sin(angle(u[0]!)) +
      a * Math.sin(angle(u[1]!)) ** 2 +
      b * angle(u[2]!) ** 4 * Math.sin(angle(u[0]!));
    const variance = a ** 2 / 8 + (b * Math.PI ** 4) / 5 + (b ** 2 * Math.PI ** 8) / 18 + 1 / 2;
    const first = [0.5 * (1 + (b * Math.PI ** 4) / 5) ** 2, a ** 2 / 8, 0].map((v) => v / variance);
    const third = (8 * b ** 2 * Math.PI ** 8) / 225 / variance;
    const total = [first[0]! + third, first[1]!, third];
    const found = effectsOf(f, 3, options);
    expect(found.variance / variance).toBeCloseTo(1, 2);
    total.forEach((share, i) => {
      expect(Math.abs(found.total[i]! - share)).toBeLessThan(4 * found.totalError[i]! + 1e-3);
      expect(found.totalError[i]!).toBeLessThan(0.01);
      expect(found.first[i]!).toBeCloseTo(first[i]!, 2);
    });
    // Printed: S₁ 0.3139, S₂ 0.4424, S_T1 0.5576, S_T3 0.2437.
    expect(total[0]).toBeCloseTo(0.5576, 4);
    expect(first[0]).toBeCloseTo(0.3139, 4);
    expect(total[2]).toBeCloseTo(0.2437, 4);
  });

  // I. M. Sobol' 1993: Π (|4u − 2| + a)/(1 + a); V_i = 1/(3 (1 + a)²), V = Π(1 + V_i) − 1.
  it('of the product function are those in closed form', () => {
    const a = [0, 1, 4.5, 9];
    const f = (u: Float64Array): number =>
      a.reduce((p, ai, i) => (p * (Math.abs(4 * u[i]! - 2) + ai)) / (1 + ai), 1);
    const parts = a.map((ai) => 1 / (3 * (1 + ai) ** 2));
    const all = parts.reduce((p, v) => p * (1 + v), 1);
    const found = effectsOf(f, 4, options);
    parts.forEach((v, i) => {
      expect(found.total[i]!).toBeCloseTo((v * all) / (1 + v) / (all - 1), 2);
      expect(found.first[i]!).toBeCloseTo(v / (all - 1), 2);
    });
  });

  it('of a sum are the shares of its squares, and of nothing are nothing', () => {
    const found = effectsOf((u) => 3 * u[0]! + 4 * u[1]!, 2, options);
    expect(found.total[0]).toBeCloseTo(9 / 25, 3);
    expect(found.total[1]).toBeCloseTo(16 / 25, 3);
    expect(effectsOf(() => 7, 2, options).total).toEqual([0, 0]);
  });

  it('of a threshold count what decides it', () => {
    // Holds where u₀ > 0.9: only the first number counts; variance 0.09.
    const found = effectsOf((u) => (u[0]! > 0.9 ? 1 : 0), 2, options);
    expect(found.variance).toBeCloseTo(0.09, 3);
    expect(found.total[0]).toBeCloseTo(1, 1);
    expect(found.total[1]).toBe(0);
  });

  it('of more numbers than half the dimensions of the sequence are found all the same', () => {
    // A weighted sum of 40 numbers: shares w²/Σw².
    const weights = Array.from({ length: 40 }, (_, i) => (i === 7 ? 6 : i === 30 ? 3 : 0.1));
    const squares = weights.reduce((sum, w) => sum + w * w, 0);
    const found = effectsOf((u) => weights.reduce((sum, w, i) => sum + w * u[i]!, 0), 40, options);
    for (const i of [7, 30, 31]) {
      const share = weights[i]! ** 2 / squares;
      expect(Math.abs(found.total[i]! - share)).toBeLessThan(4 * found.totalError[i]! + 1e-3);
      expect(found.totalError[i]!).toBeLessThan(0.02);
    }
  });
});
