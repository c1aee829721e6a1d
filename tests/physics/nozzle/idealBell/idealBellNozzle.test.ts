import { describe, expect, test } from 'vitest';
import { idealContour } from '../../../../src/physics/nozzle/idealBell/shape.ts';
import { nozzleModel } from '../../../../src/physics/nozzle/index.ts';
import { problemCode } from '../../problemCode.ts';
import { degrees, perfectGas } from '../perfectGas.ts';

const gas = perfectGas({ gamma: 1.23, pressure: 1e7 });
const shape = (spec: { areaRatio: number; length?: number; designMach?: number }) =>
  idealContour({ kind: 'idealBell', ...spec }, gas, gas.atAreaRatio(spec.areaRatio, 'supersonic').pressure);
const steepest = (wall: readonly { angle: number }[]) => Math.max(...wall.map(({ angle }) => angle));

/**
 * Cut ideal contours, γ = 1.23, arc of 0.382 throat radii, 80 % of the 15° cone: an independent calculation by
 * characteristics from a plane start line at Mach 1.05 to 1.15, ±0.7° and the ranges it gives itself (recomputed, not
 * printed anywhere).
 */
const TABLE = [
  { areaRatio: 10, arc: [19.2, 20], steep: [23.8, 24.2], lip: 11.6, mach: [3.79, 3.81] },
  { areaRatio: 25, arc: [22.9, 23.7], steep: [27.5, 27.8], lip: 10.1, mach: [4.47, 4.49] },
  { areaRatio: 50, arc: [25.6, 26.3], steep: [30.1, 30.4], lip: 9.7, mach: [5.05, 5.07] },
] as const;

describe.each(TABLE)(
  'cut at 80 % and an area ratio of $areaRatio',
  ({ areaRatio, arc, steep, lip, mach }) => {
    const { turn, designMach, wall } = shape({ areaRatio, length: 0.8 });

    test('angles are those of the independent calculation within 0.7°', () => {
      const within = (angle: number, [low, high]: readonly [number, number]) => {
        expect(angle).toBeGreaterThan(degrees(low - 0.7));
        expect(angle).toBeLessThan(degrees(high + 0.7));
      };
      within(turn, arc);
      within(steepest(wall), steep);
      within(wall.at(-1)!.angle, [lip, lip]);
    });

    test('design Mach number likewise, within 0.02', () => {
      expect(designMach).toBeGreaterThan(mach[0] - 0.02);
      expect(designMach).toBeLessThan(mach[1] + 0.02);
    });

    test('asking by that Mach number gives the same wall', () => {
      const again = shape({ areaRatio, designMach });
      expect(again.wall.at(-1)!.axial).toBeCloseTo(wall.at(-1)!.axial, 3);
    });
  },
);

test.each([10, 25, 50])(
  'whole at ε %d: parallel, uniform, its Mach number that of one-dimensional flow',
  (areaRatio) => {
    const { wall, designMach } = shape({ areaRatio });
    expect(wall.at(-1)!.angle).toBe(0);
    expect(Math.abs(wall.at(-1)!.radius ** 2 / areaRatio - 1)).toBeLessThan(2e-3);
    // The mass flow is that of the curved sonic line, C_D = 0.995: A/A* is ε/C_D.
    const exit = gas.atAreaRatio(areaRatio / 0.9951, 'supersonic');
    expect(Math.abs(designMach / exit.mach! - 1)).toBeLessThan(1e-3);
  },
);

describe('flow along it', () => {
  // The field is computed along the wall as along any other: it finds the parallel flow for which the wall was made.
  test('the whole contour loses nothing to divergence (0.1 %), and its lip has the mean pressure (1 %)', () => {
    const model = nozzleModel({ kind: 'idealBell', areaRatio: 20 }, gas);
    expect(Math.abs(model.divergenceFactor - 1)).toBeLessThan(1e-3);
    expect(Math.abs(model.at(0).flow.lipPressure / model.exit.pressure - 1)).toBeLessThan(0.02);
    expect(Math.abs(model.balance()!.momentum)).toBeLessThan(1e-3);
  });

  test('cut, it has no internal shock and pushes about as hard as the parabola of its length (0.3 %)', () => {
    const cut = nozzleModel({ kind: 'idealBell', areaRatio: 25, length: 0.8 }, gas);
    const bell = nozzleModel({ kind: 'bell', areaRatio: 25, length: 0.8 }, gas);
    expect(Math.abs(cut.at(0).thrustCoefficient! / bell.at(0).thrustCoefficient! - 1)).toBeLessThan(3e-3);
    for (let i = 1; i < cut.wallStations()!.length; i++)
      expect(cut.wallStations()![i]!.pressure).toBeLessThan(cut.wallStations()![i - 1]!.pressure * 1.001);
  });

  test('is drawn with the lip at its area ratio and the length asked for', () => {
    const model = nozzleModel({ kind: 'idealBell', areaRatio: 25, length: 0.8 }, gas);
    const drawn = model.contour!(0.1, {
      contractionRatio: 2.5,
      characteristicLength: 1,
      convergingAngle: degrees(30),
    });
    expect((drawn.exitRadius / 0.1) ** 2).toBeCloseTo(25, 6);
    expect(drawn.nozzleLength / 0.1).toBeCloseTo((0.8 * 4) / Math.tan(degrees(15)), 2);
    expect(drawn.steepestAngle).toBeGreaterThan(drawn.lipAngle);
    for (let i = 1; i < drawn.wall.length; i++)
      expect(drawn.wall[i]!.axial).toBeGreaterThan(drawn.wall[i - 1]!.axial);
  });
});

describe('refuses', () => {
  test.each([
    ['a length beyond the whole contour', { areaRatio: 10, length: 2 }],
    ['a length no contour reaches', { areaRatio: 100, length: 0.4 }],
    ['a design Mach number too low for the area ratio', { areaRatio: 50, designMach: 3 }],
    ['one that no arc reaches', { areaRatio: 10, designMach: 11.9 }],
  ])('%s', (_, spec) => {
    expect(problemCode(() => shape(spec))).toBe('ideal-bell-cannot-be-so');
  });
});
