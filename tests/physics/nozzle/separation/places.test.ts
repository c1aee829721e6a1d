import { describe, expect, test } from 'vitest';
import { type WallStation, wallSeparation } from '../../../../src/physics/nozzle/index.ts';
import { problemCode } from '../../problemCode.ts';
import { perfectGas } from '../perfectGas.ts';

const gas = perfectGas({ gamma: 1.2, pressure: 1e7 });

/** A wall whose pressure is given: radius and Mach number follow one-dimensional flow of the same gas. */
function wallOf(pressures: readonly number[]) {
  const stations = pressures.map((pressure, i): WallStation => {
    const { mach, temperature } = gas.atPressure(pressure);
    return { axial: i, radius: 1 + 0.2 * i, pressure, mach, temperature };
  });
  return wallSeparation({
    expansion: gas,
    stations,
    form: 'cone',
    meanExitPressure: pressures.at(-1)!,
    from: 'field',
  });
}

describe('the place of separation', () => {
  const falling = [4e6, 2e6, 1e6, 5e5, 2.5e5, 1.25e5, 6e4, 4e4];
  const wall = wallOf(falling);

  test('meets its criterion: wall pressure over ambient is the published ratio there', () => {
    for (const ambient of [1.8e5, 3e5, 1e6]) {
      for (const { ratio, place, id } of wall.criteria(ambient)) {
        if (place === null || place.axial === 7) continue;
        // The limit is interpolated over cells a factor of two in pressure wide, the Mach number evenly: within 2 %.
        expect(place.pressure / ambient / ratio!, id).toBeGreaterThan(0.98);
        expect(place.pressure / ambient / ratio!, id).toBeLessThan(1.02);
      }
    }
  });

  test('is exact at a station: the ambient pressure of its limit', () => {
    const place = wall.criteria(1e6 / 0.4).find(({ id }) => id === 'summerfield')!.place!;
    expect(place.axial).toBeCloseTo(2, 9);
    expect(place.pressure / 1e6).toBeCloseTo(1, 9);
  });

  test('walks upstream as the surroundings press harder, and never past the throat', () => {
    let last = Number.POSITIVE_INFINITY;
    for (let ambient = 5e4; ambient < 6e6; ambient *= 1.05) {
      const { place, earliest, latest } = wall.at(ambient, 1).separation;
      expect(place.axial).toBeLessThanOrEqual(last);
      expect(earliest.axial).toBeLessThanOrEqual(place.axial);
      expect(latest.axial).toBeGreaterThanOrEqual(place.axial);
      expect(place.axial).toBeGreaterThanOrEqual(0);
      last = place.axial;
    }
    expect(last).toBe(0);
  });

  test('the same filling and emptying where the pressure falls along the wall', () => {
    for (const { rising, falling: emptying } of wall.alongThrottle(101_325, [0.1, 0.3, 0.6, 1])) {
      expect(rising).toEqual(emptying);
    }
  });

  test('differs where the pressure rises along the wall: a dip holds a filling jet back, not a full one', () => {
    const dipped = wallOf([4e6, 2e6, 1e6, 2e5, 3e5, 3.5e5, 3e5, 2.8e5]);
    const [point] = dipped.alongThrottle(6e5, [1]);
    expect(point!.falling.axial).toBe(7);
    expect(point!.rising.axial).toBeGreaterThan(2);
    expect(point!.rising.axial).toBeLessThan(3);
    const { best, bestRising } = dipped.lowestFullThrottle(6e5);
    expect(bestRising).toBeGreaterThan(best);
  });

  test('refuses a wall without places', () => {
    expect(problemCode(() => wallOf([4e6]))).toBe('wall-without-stations');
  });
});
