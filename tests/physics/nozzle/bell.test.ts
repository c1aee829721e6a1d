import { describe, expect, test } from 'vitest';
import {
  BELL_ANGLES,
  bellAnglesFromChart,
  bellNozzle,
  divergenceFactorOfBell,
  divergenceFactorOfCone,
  nozzleModel,
  referenceConeLength,
} from '../../../src/physics/nozzle/index.ts';
import { problemCode } from '../problemCode.ts';
import { degrees, perfectGas } from './perfectGas.ts';

/** (1 + cos α)/2, recomputed, exact; five decimals. */
test.each([
  [10, 0.9924],
  [12, 0.98907],
  [15, 0.98296],
  [18, 0.97553],
  [20, 0.96985],
])('divergence factor of a cone of %d°', (angle, factor) => {
  expect(Math.abs(divergenceFactorOfCone(degrees(angle)) - factor)).toBeLessThan(1e-5);
});

/**
 * G. P. Sutton, O. Biblarz, Rocket Propulsion Elements, 7th ed., 2001, Table 3-4 (from memory): ε, 15° cone length,
 * 80 % and 70 % bell lengths in throat radii, divergence factors.
 */
const TABLE_3_4 = [
  { areaRatio: 10, cone: 8.07, at80: 6.45, at70: 5.64, factor80: 0.985, factor70: 0.978 },
  { areaRatio: 25, cone: 14.93, at80: 11.94, at70: 10.45, factor80: 0.987, factor70: 0.983 },
  { areaRatio: 50, cone: 22.66, at80: 18.12, at70: 15.86, factor80: 0.988, factor70: 0.984 },
] as const;

describe.each(TABLE_3_4)(
  'Table 3-4, ε = $areaRatio',
  ({ areaRatio, cone, at80, at70, factor80, factor70 }) => {
    test('lengths (0.1 %: three printed figures; the 70 % column is rounded down, 0.2 %)', () => {
      const length = referenceConeLength(areaRatio);
      expect(Math.abs(length / cone - 1)).toBeLessThan(1e-3);
      expect(Math.abs((0.8 * length) / at80 - 1)).toBeLessThan(1e-3);
      expect(Math.abs((0.7 * length) / at70 - 1)).toBeLessThan(2e-3);
    });

    // 0.001 with the table's own lip angle; 0.002 with the chart's, whose ±1.5° alone move the factor by that much; 0.003
    // at 70 %, where the chart has no curve and the lip angle is interpolated.
    test('divergence factors', () => {
      const ownLipAngle = { 10: 10, 25: 8, 50: 7.5 }[areaRatio];
      expect(Math.abs(divergenceFactorOfBell(0.8, degrees(ownLipAngle)) - factor80)).toBeLessThan(1e-3);
      const factor = (length: number) =>
        divergenceFactorOfBell(length, bellAnglesFromChart(areaRatio, length).lipAngle);
      expect(Math.abs(factor(0.8) - factor80)).toBeLessThan(2e-3);
      expect(Math.abs(factor(0.7) - factor70)).toBeLessThan(3e-3);
    });

    // The table's own angles, 25/10, 30/8, 32/7.5, against the chart: ±1.5°.
    test('angles of the 80 % bell', () => {
      const printed = { 10: [25, 10], 25: [30, 8], 50: [32, 7.5] }[areaRatio];
      const { throatAngle, lipAngle } = bellAnglesFromChart(areaRatio, 0.8);
      expect(Math.abs(throatAngle - degrees(printed[0]!))).toBeLessThan(degrees(1.5));
      expect(Math.abs(lipAngle - degrees(printed[1]!))).toBeLessThan(degrees(1.5));
    });
  },
);

describe('the chart', () => {
  test('gives back each of its rows, and every row is marked', () => {
    expect(BELL_ANGLES.length).toBe(18);
    for (const { areaRatio, length, throatAngleDeg, lipAngleDeg, mark } of BELL_ANGLES) {
      const { throatAngle, lipAngle } = bellAnglesFromChart(areaRatio, length);
      expect(throatAngle).toBeCloseTo(degrees(throatAngleDeg), 10);
      expect(lipAngle).toBeCloseTo(degrees(lipAngleDeg), 10);
      expect(mark).toContain('memory');
    }
  });

  test('longer bells have smaller angles everywhere, up to 100 %; larger area ratios open wider', () => {
    let compared = 0;
    for (let areaRatio = 5; areaRatio <= 100; areaRatio += 2.5) {
      for (let length = 0.6; length < 0.995; length += 0.05) {
        const here = bellAnglesFromChart(areaRatio, length);
        const longer = bellAnglesFromChart(areaRatio, Math.min(1, length + 0.05));
        expect(longer.lipAngle).toBeLessThan(here.lipAngle);
        expect(longer.throatAngle).toBeLessThan(here.throatAngle);
        expect(bellAnglesFromChart(Math.min(100, areaRatio + 1), length).throatAngle).toBeGreaterThanOrEqual(
          here.throatAngle,
        );
        compared++;
      }
    }
    expect(compared).toBeGreaterThan(300);
  });

  /**
   * Truncated ideal contours of the same envelope, an independent characteristics calculation (γ 1.23, ±0.7°): they open
   * 1–2.5° less at the steepest point and exit 1.5–2° more than thrust-optimised walls; with the chart's ±1.5° the
   * difference must not change sign by more than that.
   */
  test.each([
    [10, 24, 11.6],
    [25, 27.65, 10.1],
    [50, 30.25, 9.7],
  ])(
    'opens wider and exits straighter than a truncated ideal contour, ε = %d',
    (areaRatio, steepest, exit) => {
      const { throatAngle, lipAngle } = bellAnglesFromChart(areaRatio, 0.8);
      expect(throatAngle).toBeGreaterThan(degrees(steepest));
      expect(lipAngle).toBeLessThan(degrees(exit));
    },
  );
});

describe('refusals', () => {
  const gas = perfectGas({ gamma: 1.2, pressure: 1e7 });
  test.each([
    [{ kind: 'bell', areaRatio: 2.5, length: 0.8 }, 'bell-angles-not-tabulated'],
    [{ kind: 'bell', areaRatio: 500, length: 0.8 }, 'bell-angles-not-tabulated'],
    [{ kind: 'bell', areaRatio: 500, length: 0.8, throatAngle: degrees(34) }, 'bell-angles-not-tabulated'],
    [{ kind: 'bell', areaRatio: 25, length: 0.5 }, 'bell-length-outside-range'],
    [{ kind: 'bell', areaRatio: 25, length: 1.2 }, 'bell-length-outside-range'],
    [{ kind: 'bell', areaRatio: 25, length: Number.NaN }, 'bell-length-outside-range'],
    [
      { kind: 'bell', areaRatio: 25, length: 0.8, throatAngle: degrees(10), lipAngle: degrees(5) },
      'bell-angles-do-not-join',
    ],
    [
      { kind: 'bell', areaRatio: 25, length: 0.8, throatAngle: degrees(30), lipAngle: degrees(25) },
      'bell-angles-do-not-join',
    ],
    [
      { kind: 'bell', areaRatio: 25, length: 0.8, throatAngle: Number.NaN, lipAngle: degrees(8) },
      'bell-angles-do-not-join',
    ],
    [{ kind: 'bell', areaRatio: 1, length: 0.8 }, 'area-ratio-outside-range'],
    [{ kind: 'ideal', areaRatio: 1001 }, 'area-ratio-outside-range'],
    [{ kind: 'adapting', areaRatio: Number.NaN }, 'area-ratio-outside-range'],
    [{ kind: 'cone', areaRatio: 25, halfAngle: 0 }, 'cone-angle-outside-range'],
    [{ kind: 'cone', areaRatio: 25, halfAngle: degrees(46) }, 'cone-angle-outside-range'],
  ] as const)('%o', (spec, code) => {
    expect(problemCode(() => nozzleModel(spec, gas))).toBe(code);
  });

  test('ambient pressures that are none', () => {
    const nozzle = nozzleModel({ kind: 'ideal', areaRatio: 25 }, gas);
    for (const p of [-1, Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(problemCode(() => nozzle.at(p))).toBe('ambient-pressure-invalid');
    }
  });

  test('stated angles go beyond the chart', () => {
    const nozzle = bellNozzle(
      { kind: 'bell', areaRatio: 150, length: 0.8, throatAngle: degrees(34), lipAngle: degrees(7) },
      gas,
    );
    expect(nozzle.divergenceFactor).toBeGreaterThan(0.98);
  });
});
