import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { nozzleModel } from '../../../src/physics/nozzle/index.ts';
import { perfectGas } from './perfectGas.ts';

const share = (low: number, high: number) => fc.double({ min: low, max: high, noNaN: true });
/** Rounding of two evaluations of the same formula. */
const ROUNDING = 1e-12;

describe('the adapting bound', () => {
  test('is at least every fixed nozzle up to its area ratio, at every ambient pressure', () => {
    fc.assert(
      fc.property(
        share(1.1, 1.4),
        share(1.05, 300),
        share(0, 1),
        share(0, 1),
        (gamma, areaRatio, smaller, ambientShare) => {
          const gas = perfectGas({ gamma, pressure: 1e7 });
          const ambient = gas.throat.pressure * ambientShare ** 4; // many near vacuum, some near the throat's
          const fixedRatio = 1.01 + (areaRatio - 1.01) * smaller;
          const bound = nozzleModel({ kind: 'adapting', areaRatio }, gas).at(ambient).thrustCoefficient!;
          for (const spec of [
            { kind: 'ideal', areaRatio: fixedRatio },
            { kind: 'cone', areaRatio: fixedRatio, halfAngle: 0.2 },
          ] as const) {
            const fixed = nozzleModel(spec, gas).at(ambient).thrustCoefficientIfFull;
            expect(bound).toBeGreaterThanOrEqual(fixed - ROUNDING);
          }
        },
      ),
      { numRuns: 300 },
    );
  });

  test('equals the fixed ideal nozzle where that is matched, and in all thinner air at full area ratio', () => {
    const gas = perfectGas({ gamma: 1.2, pressure: 1e7 });
    const bound = nozzleModel({ kind: 'adapting', areaRatio: 80 }, gas);
    for (const areaRatio of [3, 10, 40, 80]) {
      const fixed = nozzleModel({ kind: 'ideal', areaRatio }, gas);
      const difference =
        bound.at(fixed.matchedAmbient).thrustCoefficient! - fixed.at(fixed.matchedAmbient).thrustCoefficient!;
      expect(Math.abs(difference)).toBeLessThan(ROUNDING);
    }
    const full = nozzleModel({ kind: 'ideal', areaRatio: 80 }, gas);
    for (const ambient of [0, 10, 1000]) {
      expect(bound.at(ambient).thrustCoefficient).toBeCloseTo(full.at(ambient).thrustCoefficient!, 13);
      expect(bound.at(ambient).exit.areaRatio).toBeCloseTo(80, 9);
    }
  });

  test('moves its exit state with ambient pressure down to the throat, without a step', () => {
    const gas = perfectGas({ gamma: 1.2, pressure: 1e7 });
    const bound = nozzleModel({ kind: 'adapting', areaRatio: 80 }, gas);
    expect(bound.at(1e5).exit.pressure).toBeCloseTo(1e5, 4);
    const step = (p: number) => bound.at(p * (1 + 1e-9)).thrustCoefficient! - bound.at(p).thrustCoefficient!;
    expect(Math.abs(step(bound.matchedAmbient))).toBeLessThan(1e-8);
    // At the throat pressure: momentum of the sonic throat alone, C_F = γ [2/(γ+1)]^(γ/(γ−1)) (closed form).
    const expected = 1.2 * (2 / 2.2) ** (1.2 / 0.2);
    expect(bound.at(gas.throat.pressure).thrustCoefficient).toBeCloseTo(expected, 9);
  });
});
