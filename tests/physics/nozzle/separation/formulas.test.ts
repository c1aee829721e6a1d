import { describe, expect, test } from 'vitest';
import {
  KALT_BADAL,
  SCHILLING_CONTOURED,
  SEPARATION_PRESSURE_RATIO_SUMMERFIELD,
  separationPressureRatioPower,
  separationPressureRatioSchmucker,
  separationPressureRatioShockMach,
  separationPressureRatioStark,
  separationPressureRatioZukoski,
} from '../../../../src/physics/nozzle/index.ts';
import { limitAmbientPower } from '../../../../src/physics/nozzle/separation/formulas.ts';

/**
 * Mach, Schmucker 1973, Stark 2013, Zukoski 1967: the formulas are from memory, the values recomputed apart from this program.
 * Tolerance 1e-4: four decimals.
 */
const BY_MACH = [
  [2, 0.5222, 0.5236, 0.5],
  [2.5, 0.4329, 0.4189, 0.4444],
  [3, 0.3745, 0.3491, 0.4],
  [3.5, 0.3328, 0.2992, 0.3636],
  [4, 0.3012, 0.2618, 0.3333],
  [4.5, 0.2763, 0.2327, 0.3077],
  [5, 0.2561, 0.2094, 0.2857],
] as const;

/** p_c/p_a, Kalt & Badal 1965, Schilling 1962 (contoured): as above. */
const BY_PRESSURE_RATIO = [
  [20, 0.3662, 0.3251],
  [50, 0.3049, 0.2719],
  [100, 0.2654, 0.2375],
  [200, 0.231, 0.2075],
] as const;

describe('published criteria', () => {
  test.each(BY_MACH)('Mach %d: Schmucker %d, Stark %d, Zukoski %d', (mach, schmucker, stark, zukoski) => {
    expect(Math.abs(separationPressureRatioSchmucker(mach) - schmucker)).toBeLessThan(1e-4);
    expect(Math.abs(separationPressureRatioStark(mach) - stark)).toBeLessThan(1e-4);
    expect(Math.abs(separationPressureRatioZukoski(mach) - zukoski)).toBeLessThan(1e-4);
  });

  test.each(BY_PRESSURE_RATIO)('p_c/p_a %d: Kalt & Badal %d, Schilling %d', (ratio, kaltBadal, schilling) => {
    expect(Math.abs(separationPressureRatioPower(KALT_BADAL, ratio) - kaltBadal)).toBeLessThan(1e-4);
    expect(Math.abs(separationPressureRatioPower(SCHILLING_CONTOURED, ratio) - schilling)).toBeLessThan(1e-4);
  });

  test('Summerfield 1954: 0.4', () => {
    expect(SEPARATION_PRESSURE_RATIO_SUMMERFIELD).toBe(0.4);
  });

  test('the power law turned round gives the ambient pressure at which it is met', () => {
    for (const ratio of [3, 20, 100, 400]) {
      const ambient = 1e7 / ratio;
      const wall = separationPressureRatioPower(KALT_BADAL, ratio) * ambient;
      expect(limitAmbientPower(KALT_BADAL, wall, 1e7) / ambient).toBeCloseTo(1, 12);
    }
  });

  test('none says that flow at ambient pressure leaves the wall', () => {
    for (let mach = 1; mach < 6; mach += 0.01) {
      for (const ratio of [
        separationPressureRatioSchmucker(mach),
        separationPressureRatioStark(mach),
        separationPressureRatioZukoski(mach),
        separationPressureRatioShockMach(mach, 1.2),
      ]) {
        expect(ratio).toBeGreaterThan(0);
        expect(ratio).toBeLessThanOrEqual(1);
      }
    }
  });
});

describe('the shock that slows the gas to 0.762 of its Mach number', () => {
  /** Oblique shock, NACA Report 1135 (1953): M₂ from the normal component, written here by the wave angle. */
  function machBehind(mach: number, gamma: number, pressureRatio: number): number {
    const normal2 = 1 + ((pressureRatio - 1) * (gamma + 1)) / (2 * gamma);
    const beta = Math.asin(Math.sqrt(normal2) / mach);
    const turn = Math.atan(
      (2 / Math.tan(beta)) *
        ((mach ** 2 * Math.sin(beta) ** 2 - 1) / (mach ** 2 * (gamma + Math.cos(2 * beta)) + 2)),
    );
    const behindNormal = Math.sqrt((1 + ((gamma - 1) / 2) * normal2) / (gamma * normal2 - (gamma - 1) / 2));
    return behindNormal / Math.sin(beta - turn);
  }

  test.each([
    [2, 1.4],
    [3, 1.4],
    [3, 1.2],
    [4.5, 1.25],
  ])('M %d, γ %d', (mach, gamma) => {
    const ratio = separationPressureRatioShockMach(mach, gamma);
    expect(machBehind(mach, gamma, 1 / ratio) / mach).toBeCloseTo(0.762, 10);
  });

  test('near Mach 1 it is the normal shock: 4.5 at Mach 2 by NACA 1135 is far stronger', () => {
    expect(separationPressureRatioShockMach(1.05, 1.4)).toBeCloseTo(
      1 / (1 + (2.8 / 2.4) * (1.05 ** 2 - 1)),
      12,
    );
    expect(separationPressureRatioShockMach(2, 1.4)).toBeGreaterThan(1 / 4.5);
  });
});
