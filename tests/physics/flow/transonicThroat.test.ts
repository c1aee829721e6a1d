import { describe, expect, test } from 'vitest';
import { dischargeCoefficient, throatVelocity } from '../../../src/physics/flow/transonicThroat.ts';

describe('the transonic throat series', () => {
  test.each([
    [5, 1.4],
    [1.5, 1.2],
    [0.8, 1.15],
  ])('is irrotational to the truncation of the difference (R %f, γ %f)', (R, gamma) => {
    const h = 1e-4;
    const at = (x: number, r: number) => throatVelocity(x, r, R, gamma);
    for (const [x, r] of [
      [0.02, 0.5],
      [-0.05, 0.8],
      [0.1, 0.2],
    ] as const) {
      const uByR = (at(x, r + h).u - at(x, r - h).u) / (2 * h);
      const vByX = (at(x + h, r).v - at(x - h, r).v) / (2 * h);
      expect(Math.abs(uByR - vByX)).toBeLessThan(1e-8);
    }
  });

  test('follows the wall at the throat: v/u is the wall slope to the order of the series', () => {
    for (const R of [5, 10, 20]) {
      const x = 0.1;
      const wall = 1 + R - Math.sqrt(R * R - x * x);
      const { u, v } = throatVelocity(x, wall, R, 1.3);
      const slope = x / Math.sqrt(R * R - x * x);
      // Third order in 1/(1 + R), times the slope's own size.
      expect(Math.abs(v / u - slope)).toBeLessThan(1.5 / (1 + R) ** 2.5);
    }
  });

  test('carries the published share of the one-dimensional flow', () => {
    for (const [R, gamma] of [
      [5, 1.4],
      [2, 1.3],
    ] as const) {
      let carried = 0;
      const n = 2000;
      for (let i = 0; i < n; i++) {
        const r = (i + 0.5) / n;
        const { u, v } = throatVelocity(0, r, R, gamma);
        const density = ((gamma + 1) / 2 - ((gamma - 1) / 2) * (u * u + v * v)) ** (1 / (gamma - 1));
        carried += (density * u * 2 * r) / n;
      }
      expect(Math.abs(carried - dischargeCoefficient(R, gamma))).toBeLessThan(0.3 / (1 + R) ** 3);
    }
  });

  // Kliegel & Levine 1969, third order, from memory: 0.99920 (R 5, γ 1.4), 0.99449 (R 1.5, γ 1.2). Ours stops at the
  // second order, which differs by the third-order term.
  test.each([
    [5, 1.4, 0.9992, 1e-4],
    [1.5, 1.2, 0.99449, 1e-3],
  ])('discharge coefficient at R %f, γ %f', (R, gamma, published, tolerance) => {
    expect(Math.abs(dischargeCoefficient(R, gamma) - published)).toBeLessThan(tolerance);
  });
});
