import { describe, expect, test } from 'vitest';
import {
  detachmentAnglePerfect,
  greatestTurnPerfect,
  normalShockPerfect,
  obliqueShockPerfect,
  perfectShockAt,
  perfectShockOfRise,
} from '../../../../src/physics/flow/shocks/perfectShock.ts';
import { problemCode } from '../../problemCode.ts';

const degree = Math.PI / 180;

// Rows recomputed from the exact formulas, in the form of NACA Report 1135 (1953), γ = 1.4; printed tables carry four
// figures. 6e-5 relative is half a unit of the last digit written here.
const NORMAL = [
  [1.5, 0.7011, 2.4583, 1.8621, 1.3202, 0.92979],
  [2, 0.5774, 4.5, 2.6667, 1.6875, 0.72087],
  [3, 0.4752, 10.3333, 3.8571, 2.679, 0.32834],
  [4, 0.435, 18.5, 4.5714, 4.0469, 0.13876],
  [5, 0.4152, 29, 5, 5.8, 0.061716],
  [10, 0.3876, 116.5, 5.7143, 20.3875, 0.0030448],
] as const;

const OBLIQUE = [
  [2, 10, 39.314, 1.7066, 1.6405, 22.974],
  [2, 20, 53.423, 2.8429, 1.2102, 22.974],
  [3, 10, 27.383, 2.0545, 2.505, 34.073],
  [3, 20, 37.764, 3.7713, 1.9941, 34.073],
  [5, 20, 29.801, 7.0374, 3.0222, 41.118],
] as const;

const near = (value: number, wanted: number, share: number): void => {
  expect(Math.abs(value / wanted - 1), `${value} for ${wanted}`).toBeLessThan(share);
};

describe('shocks in a perfect gas', () => {
  test.each(NORMAL)('normal, Mach %f: NACA Report 1135', (mach, behind, p, rho, T, p0) => {
    const shock = normalShockPerfect(mach, 1.4);
    near(shock.machBehind, behind, 2e-4);
    near(shock.pressureRatio, p, 6e-5);
    near(shock.densityRatio, rho, 6e-5);
    near(shock.temperatureRatio, T, 6e-5);
    near(shock.stagnationPressureRatio, p0, 6e-5);
    expect(shock.turn).toBeCloseTo(0, 12);
  });

  test.each(OBLIQUE)('Mach %f turned by %f°: NACA Report 1135', (mach, turn, wave, p, behind, greatest) => {
    const shock = obliqueShockPerfect(mach, 1.4, turn * degree);
    near(shock.waveAngle / degree, wave, 3e-5);
    near(shock.pressureRatio, p, 6e-5);
    near(shock.machBehind, behind, 6e-5);
    near(greatestTurnPerfect(mach, 1.4) / degree, greatest, 3e-5);
  });

  test('both branches turn by the angle asked for, and meet at the greatest turn', () => {
    for (const gamma of [1.15, 1.25, 1.4, 5 / 3]) {
      for (const mach of [1.3, 2, 4, 12]) {
        const most = greatestTurnPerfect(mach, gamma);
        for (const share of [0.01, 0.4, 0.9, 0.999]) {
          const weak = obliqueShockPerfect(mach, gamma, share * most);
          const strong = obliqueShockPerfect(mach, gamma, share * most, 'strong');
          // Near the Mach angle the closed form loses half its digits.
          near(weak.turn, share * most, 1e-7);
          near(strong.turn, share * most, 1e-7);
          expect(weak.waveAngle).toBeLessThan(detachmentAnglePerfect(mach, gamma));
          expect(strong.waveAngle).toBeGreaterThan(detachmentAnglePerfect(mach, gamma));
        }
      }
    }
  });

  test('the shock of a rise has that rise, and entropy grows with it', () => {
    let last = 1;
    for (const rise of [1.0001, 1.5, 3, 6, 10]) {
      const shock = perfectShockOfRise(3, 1.3, rise);
      near(shock.pressureRatio, rise, 1e-12);
      expect(shock.stagnationPressureRatio).toBeLessThan(last);
      last = shock.stagnationPressureRatio;
    }
  });

  test('says what cannot be', () => {
    expect(problemCode(() => obliqueShockPerfect(2, 1.4, 25 * degree))).toBe('shock-detached');
    expect(problemCode(() => perfectShockAt(2, 1.4, 20 * degree))).toBe('no-shock-at-angle');
    expect(problemCode(() => perfectShockOfRise(2, 1.4, 5))).toBe('shock-rise-out-of-range');
    expect(problemCode(() => normalShockPerfect(0.9, 1.4))).toBe('no-shock-in-flow');
  });
});
