import { describe, expect, test } from 'vitest';
import { evenTable } from '../../../src/physics/euler/evenTable.ts';
import { placesAlong, stretchedShares } from '../../../src/physics/wholeFlow/places.ts';
import { wallCourse } from '../../../src/physics/wholeFlow/wallCourse.ts';

describe('places of a mesh', () => {
  test('cells as long as wanted, and as many as asked for', () => {
    const places = placesAlong(1, 4, (x) => 0.1 * x);
    // ∫ dx/(0.1 x) = 10 ln 4 = 13.9 cells, in equal ratios.
    expect(places).toHaveLength(15);
    expect(places[0]).toBe(1);
    expect(places.at(-1)).toBe(4);
    for (let i = 2; i < places.length; i++)
      expect((places[i]! - places[i - 1]!) / (places[i - 1]! - places[i - 2]!)).toBeCloseTo(4 ** (1 / 14), 3);
    expect(placesAlong(0, 1, () => 1, 5)).toHaveLength(6);
    expect(() => placesAlong(1, 0, () => 1)).toThrow(/cannot be/);
  });

  test('shares that stretch evenly from a first one', () => {
    const shares = stretchedShares(10, 0.01);
    expect(shares).toHaveLength(11);
    expect(shares[1]).toBeCloseTo(0.01, 6);
    expect(shares[10]).toBe(1);
    const ratio = (i: number): number => (shares[i + 1]! - shares[i]!) / (shares[i]! - shares[i - 1]!);
    for (let i = 2; i < 10; i++) expect(ratio(i)).toBeCloseTo(ratio(1), 6);
    expect(stretchedShares(4, 0.25)).toEqual([0, 0.25, 0.5, 0.75, 1]);
  });

  test('a wall through its points with its own angles: a circle from seven of them', () => {
    const wall = Array.from({ length: 7 }, (_, i) => {
      const phi = -0.6 + 0.2 * i;
      return { axial: Math.sin(phi), radius: 2 - Math.cos(phi), angle: phi };
    });
    const course = wallCourse(wall);
    for (let x = -0.5; x <= 0.5; x += 0.07) expect(course(x)).toBeCloseTo(2 - Math.sqrt(1 - x * x), 4);
    expect(course(1)).toBeCloseTo(wall[6]!.radius + (1 - wall[6]!.axial) * Math.tan(0.6), 12);
  });

  test('a table with its slopes: exact for planes, close for waves, straight on beyond its ends', () => {
    const axis = { from: -1, step: 0.1, count: 21 };
    const values = (of: (x: number, y: number) => number): Float64Array =>
      Float64Array.from({ length: 441 }, (_, k) => of(-1 + 0.1 * Math.floor(k / 21), -1 + 0.1 * (k % 21)));
    const plane = evenTable(
      axis,
      axis,
      values((x, y) => 3 + 2 * x - 5 * y),
    );
    plane.read(1.7, -2.2);
    expect(plane.value).toBeCloseTo(17.4, 9);
    expect(plane.slopeX).toBeCloseTo(2, 9);
    expect(plane.slopeY).toBeCloseTo(-5, 9);
    const wave = evenTable(
      axis,
      axis,
      values((x, y) => Math.sin(2 * x) * Math.cos(y)),
    );
    wave.read(0.234, 0.517);
    expect(wave.value).toBeCloseTo(Math.sin(0.468) * Math.cos(0.517), 3);
    expect(wave.slopeX).toBeCloseTo(2 * Math.cos(0.468) * Math.cos(0.517), 1);
    expect(wave.slopeY).toBeCloseTo(-Math.sin(0.468) * Math.sin(0.517), 1);
  });
});
