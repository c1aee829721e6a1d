import { describe, expect, test } from 'vitest';
import {
  basePressure,
  basePressureRatioByMachAlone,
  basePressureRatioFickSchmucker,
  closedWake,
} from '../../../../src/physics/nozzle/plug/basePressure.ts';
import {
  basePressureRatioKorst,
  dividingVelocity,
  shockPressureRatio,
} from '../../../../src/physics/nozzle/plug/wakeTheory.ts';
import { degrees } from '../perfectGas.ts';

describe('Korst’s theory of a closed wake', () => {
  test('incompressible: the dividing streamline has 0.616 of the speed outside (Korst 1956, from memory)', () => {
    expect(dividingVelocity(0)).toBeCloseTo(0.616, 3);
  });

  test('the velocity of the dividing streamline rises with the Mach number', () => {
    const values = [0, 0.2, 0.4, 0.6, 0.8].map(dividingVelocity);
    for (let i = 1; i < values.length; i++) expect(values[i]!).toBeGreaterThan(values[i - 1]!);
  });

  test.each([
    // Oblique shocks, weak branch, γ 1.4, exact formula (NACA Report 1135), recomputed: M, turn, p2/p1.
    [2, 10, 1.7066],
    [2, 20, 2.8429],
    [3, 10, 2.0545],
    [3, 20, 3.7713],
    [5, 20, 7.0374],
  ])('the shock that closes it: M %d turned by %d° has p2/p1 %d', (mach, turn, ratio) => {
    expect(shockPressureRatio(mach, degrees(turn), 1.4)! / ratio).toBeCloseTo(1, 4);
  });

  test('has no attached shock beyond the greatest turn: 22.97° at Mach 2 (NACA Report 1135)', () => {
    expect(shockPressureRatio(2, degrees(22.9), 1.4)).not.toBeNull();
    expect(shockPressureRatio(2, degrees(23.1), 1.4)).toBeNull();
  });

  test('falls with the Mach number, rises where the wall points inward', () => {
    const level = [1.5, 2, 3, 4].map((mach) => basePressureRatioKorst({ mach, angle: 0, gamma: 1.4 }));
    for (let i = 1; i < level.length; i++) expect(level[i]!).toBeLessThan(level[i - 1]!);
    const inward = basePressureRatioKorst({ mach: 3, angle: degrees(-10), gamma: 1.4 });
    expect(inward).toBeGreaterThan(level[2]!);
  });

  test('behind a level wall it is of the size of the fit 0.846/M^1.3, within 30 %', () => {
    // Two published models made apart from each other, both from memory: the fit is no proof, but a slip would show.
    for (const mach of [1.5, 2, 3, 4]) {
      const theory = basePressureRatioKorst({ mach, angle: 0, gamma: 1.4 });
      expect(Math.abs(theory / basePressureRatioByMachAlone(mach) - 1)).toBeLessThan(0.3);
    }
  });
});

describe('closed wake', () => {
  const walls = [
    [1.2, 2.8, -26],
    [1.2, 3.5, -15],
    [1.13, 3.2, -20],
    [1.4, 2.5, -8],
    [1.25, 4.4, -3],
  ] as const;

  test.each(walls)(
    'γ %d, M %d, %d°: above nothing, at most the wall’s pressure, by every model',
    (gamma, mach, angle) => {
      const wake = closedWake({ gamma, mach, angle: degrees(angle) }, 1e5, Number.POSITIVE_INFINITY);
      expect(wake.estimates.length).toBeGreaterThanOrEqual(2);
      for (const { pressure } of wake.estimates) {
        expect(pressure).toBeGreaterThan(0);
        expect(pressure).toBeLessThanOrEqual(1e5);
      }
    },
  );

  test('the fits are what they say', () => {
    expect(basePressureRatioFickSchmucker(3, 1.4)).toBeCloseTo(0.025 + 0.906 / 2.8, 12);
    expect(basePressureRatioByMachAlone(3.5)).toBeCloseTo(0.846 / 3.5 ** 1.3, 12);
  });
});

describe('wake at an ambient pressure', () => {
  const closed = closedWake({ gamma: 1.2, mach: 3.5, angle: degrees(-15) }, 1e5, Number.POSITIVE_INFINITY);

  test('open in dense air: the air’s pressure; closed in thin air: whatever the air', () => {
    const open = basePressure(closed, 1e5);
    expect([open.wake, open.pressure]).toEqual(['open', 1e5]);
    expect(basePressure(closed, 100)).toEqual(basePressure(closed, 0));
    expect(basePressure(closed, 0).wake).toBe('closed');
  });

  test('goes over without a step, and the band holds the value', () => {
    const at = closed.pressure;
    expect(
      basePressure(closed, at * 1.0001).pressure / basePressure(closed, at * 0.9999).pressure,
    ).toBeCloseTo(1, 3);
    for (const ambient of [0, 0.5 * at, at, 2 * at, 10 * at]) {
      const { low, pressure, high } = basePressure(closed, ambient);
      expect(low).toBeLessThanOrEqual(pressure);
      expect(high).toBeGreaterThanOrEqual(pressure);
    }
  });
});
