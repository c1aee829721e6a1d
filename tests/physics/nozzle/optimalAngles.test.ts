import { describe, expect, it } from 'vitest';
import { bellAnglesFromChart } from '../../../src/physics/nozzle/bellAngles.ts';
import { optimalBellAngles, vacuumThrustOfAngles } from '../../../src/physics/nozzle/optimalAngles.ts';
import { tabulatedBellAngles } from '../../../src/physics/nozzle/tabulatedAngles.ts';
import { perfectGas } from './perfectGas.ts';

const DEGREE = Math.PI / 180;

describe('wall angles of the greatest vacuum thrust', () => {
  it.each([
    [8, 0.8, 1.25],
    [30, 0.7, 1.15],
    [60, 0.95, 1.2],
    [250, 0.8, 1.3],
  ])('found anew where the table only interpolates: ε = %d, length %d, γ %d', (areaRatio, length, gamma) => {
    const expansion = perfectGas({ gamma, pressure: 1e7 });
    const table = tabulatedBellAngles(areaRatio, length, gamma);
    const anew = optimalBellAngles(areaRatio, length, expansion, table)!;
    const thrust = (angles: typeof table): number =>
      vacuumThrustOfAngles(areaRatio, length, expansion, angles)!;
    // The thrust is flat at its top: what interpolation misses of the angles costs below two parts in ten thousand.
    expect(thrust(table) / thrust(anew) - 1).toBeGreaterThan(-2e-4);
    expect(Math.abs(table.throatAngle - anew.throatAngle)).toBeLessThan(2.5 * DEGREE);
    expect(Math.abs(table.lipAngle - anew.lipAngle)).toBeLessThan(1.5 * DEGREE);
  });

  it.each([
    [5, 0.8],
    [10, 0.8],
    [20, 0.6],
    [30, 0.9],
    [50, 0.8],
    [100, 0.8],
  ])('give no less thrust than those of the chart: ε = %d, length %d', (areaRatio, length) => {
    const expansion = perfectGas({ gamma: 1.2, pressure: 1e7 });
    const thrust = (angles: ReturnType<typeof bellAnglesFromChart>): number =>
      vacuumThrustOfAngles(areaRatio, length, expansion, angles)!;
    const [table, chart] = [
      tabulatedBellAngles(areaRatio, length, 1.2),
      bellAnglesFromChart(areaRatio, length),
    ];
    expect(thrust(table)).toBeGreaterThan(thrust(chart));
    // The chart is remembered to ±1.5° and made for another curve: the thrust near its top does not tell 4° apart.
    expect(Math.abs(table.lipAngle - chart.lipAngle)).toBeLessThan(2.5 * DEGREE);
    expect(Math.abs(table.throatAngle - chart.throatAngle)).toBeLessThan(5.5 * DEGREE);
    expect(thrust(chart) / thrust(table)).toBeGreaterThan(0.999);
  });

  it('open wider with the area ratio, and less for a longer bell', () => {
    for (let length = 0.6; length <= 0.96; length += 0.05) {
      for (let areaRatio = 8; areaRatio <= 300; areaRatio *= 1.4) {
        const here = tabulatedBellAngles(areaRatio, length);
        expect(tabulatedBellAngles(1.2 * areaRatio, length).throatAngle).toBeGreaterThan(here.throatAngle);
        expect(tabulatedBellAngles(areaRatio, length + 0.04).lipAngle).toBeLessThan(here.lipAngle);
      }
    }
  });
});
