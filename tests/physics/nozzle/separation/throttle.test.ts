import { describe, expect, test } from 'vitest';
import { nozzleModel } from '../../../../src/physics/nozzle/index.ts';
import { perfectGas } from '../perfectGas.ts';

const SPEC = { kind: 'bell', areaRatio: 40, length: 0.8 } as const;
const AMBIENT = 101_325;

describe('throttled', () => {
  const design = nozzleModel(SPEC, perfectGas({ gamma: 1.2, pressure: 1e7 })).separation!()!;

  test('a perfect gas scales exactly: the place is that of the nozzle run at the lower chamber pressure', () => {
    for (const share of [0.2, 0.4, 0.7]) {
      const [scaled] = design.alongThrottle(AMBIENT, [share]);
      const run = nozzleModel(SPEC, perfectGas({ gamma: 1.2, pressure: share * 1e7 })).at(AMBIENT);
      const { place, earliest, latest } = run.separation!;
      for (const [a, b] of [
        [scaled!.falling, place],
        [scaled!.earliest, earliest],
        [scaled!.latest, latest],
      ] as const) {
        expect(a.areaRatio / b.areaRatio).toBeCloseTo(1, 9);
        expect(a.pressure / b.pressure).toBeCloseTo(1, 9);
      }
      expect(scaled!.case).toBe(run.separation!.case);
    }
  });

  test('the ring walks down the wall as the chamber pressure rises, and back', () => {
    const shares = Array.from({ length: 50 }, (_, i) => 0.03 + (0.97 * i) / 49);
    const points = design.alongThrottle(AMBIENT, shares);
    points.forEach(({ falling, rising }, i) => {
      if (i === 0) return;
      expect(falling.axial).toBeGreaterThanOrEqual(points[i - 1]!.falling.axial);
      expect(rising.axial).toBeGreaterThanOrEqual(points[i - 1]!.rising.axial);
      expect(rising.axial).toBeLessThanOrEqual(falling.axial);
    });
    expect(points[0]!.falling.areaRatio).toBeLessThan(3);
  });

  test('the lowest throttle that flows full is where the ring reaches the lip', () => {
    const { best, low, high } = design.lowestFullThrottle(AMBIENT);
    expect(best).toBeGreaterThan(0.5);
    expect(low).toBeLessThanOrEqual(best);
    expect(high).toBeGreaterThanOrEqual(best);
    const [above, below] = design.alongThrottle(AMBIENT, [best * 1.0001, best * 0.9999]);
    expect(above!.falling.areaRatio).toBeCloseTo(40, 9);
    expect(below!.falling.areaRatio).toBeLessThan(40);
    expect(design.lowestFullThrottle(0).best).toBe(0);
  });
});
