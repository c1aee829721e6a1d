import { describe, expect, test } from 'vitest';
import { fieldReader, type PictureBlock, streamlines } from '../../../src/physics/wholeFlow/index.ts';

type At = (axial: number, radius: number) => number;

/** A block of cells between nodes, holding functions of the place at their middles. */
function blockOf(
  [ni, nj]: readonly [number, number],
  node: (i: number, j: number) => readonly [number, number],
  of: Partial<Record<'along' | 'away' | 'density' | 'pressure', At>>,
  symmetry: PictureBlock['symmetry'] = 'round',
): PictureBlock {
  const nodes = (which: 0 | 1): Float32Array =>
    Float32Array.from(
      { length: (ni + 1) * (nj + 1) },
      (_, k) => node(k % (ni + 1), Math.floor(k / (ni + 1)))[which],
    );
  const [axial, radius] = [nodes(0), nodes(1)];
  const cells = (value: At = () => 1): Float32Array =>
    Float32Array.from({ length: ni * nj }, (_, k) => {
      const a = Math.floor(k / ni) * (ni + 1) + (k % ni);
      const corners = [a, a + 1, a + ni + 1, a + ni + 2];
      const mean = (all: Float32Array): number => corners.reduce((sum, c) => sum + all[c]!, 0) / 4;
      return value(mean(axial), mean(radius));
    });
  return {
    symmetry,
    ni,
    nj,
    axial,
    radius,
    along: cells(of.along),
    away: cells(of.away ?? (() => 0)),
    density: cells(of.density),
    pressure: cells(of.pressure),
    mach: cells(),
    temperature: cells(),
    share: cells(),
  };
}

describe('lines along which a field flows', () => {
  test('from a point source: straight, equal flow between each two, later in proportion to their length', () => {
    const half = 0.5;
    const [first, last] = [1, 3];
    const cone = blockOf(
      [60, 48],
      (i, j) => {
        const distance = first + ((last - first) * i) / 60;
        const angle = (half * j) / 48;
        return [distance * Math.cos(angle), distance * Math.sin(angle)];
      },
      {
        along: (x, r) => (2000 * x) / Math.hypot(x, r),
        away: (x, r) => (2000 * r) / Math.hypot(x, r),
        density: (x, r) => 1 / (x * x + r * r),
      },
    );
    const lines = streamlines([cone], 4, 2.4);
    expect(lines).toHaveLength(4);
    for (const [k, { axial, radius, time }] of lines.entries()) {
      const angles = axial.map((x, i) => Math.atan2(radius[i]!, x));
      // Flow within an angle of a source goes by 1 − cos; the mesh is 48 cells wide.
      const wanted = Math.acos(1 - ((k + 0.5) / 4) * (1 - Math.cos(half)));
      expect(Math.abs(angles[0]! / wanted - 1)).toBeLessThan(0.01);
      expect(Math.max(...angles.map((angle) => Math.abs(angle / angles[0]! - 1)))).toBeLessThan(5e-3);
      const length = Math.hypot(axial.at(-1)! - axial[0]!, radius.at(-1)! - radius[0]!);
      expect(time.at(-1)! / (length / 2000)).toBeCloseTo(1, 2);
      expect(axial.at(-1)!).toBeGreaterThanOrEqual(2.4);
    }
  });

  test('go on from one block into the next, and end where there is no field', () => {
    const even = (from: number) =>
      blockOf([10, 8], (i, j) => [from + 0.1 * i, 0.1 * j], { along: () => 100 });
    const [line] = streamlines([even(0), even(1)], 1, 10);
    expect(line!.axial.at(-1)!).toBeGreaterThan(1.95);
    expect(line!.axial.at(-1)!).toBeLessThan(2.05);
    // Half of the flow through a circle of 0.8 m is within 0.8 √½.
    expect(Math.abs(line!.radius.at(-1)! - 0.8 * Math.SQRT1_2)).toBeLessThan(5e-3);
  });

  test('of a flat field equal flow is equal height, whatever the distance from the middle plane', () => {
    const slab = blockOf([10, 3], (i, j) => [0.1 * i, 0.5 + 0.1 * j], { along: () => 100 }, 'flat');
    // A slab from 0.5 to 0.8 m with the same flow everywhere: quarters of it, in their middles.
    const heights = streamlines([slab], 4, 0.8).map(({ radius }) => radius.at(-1)!);
    expect(heights).toHaveLength(4);
    for (const [k, height] of heights.entries()) expect(height).toBeCloseTo(0.5 + (0.3 * (k + 0.5)) / 4, 5);
  });
});

test('between the middles of cells a field is read linearly, and nowhere outside', () => {
  const block = blockOf([12, 6], (i, j) => [0.1 * i + 0.02 * j, 0.1 * j + 0.01 * i], {
    pressure: (x, r) => 1e5 + 3e4 * x - 2e4 * r,
  });
  const reader = fieldReader([block]);
  for (const [x, r] of [
    [0.5, 0.3],
    [0.9, 0.2],
    [0.31, 0.41],
  ] as const) {
    expect(reader.goTo(x, r)).toBe(true);
    expect(reader.read('pressure')).toBeCloseTo(1e5 + 3e4 * x - 2e4 * r, -1);
  }
  expect(reader.goTo(5, 0.2)).toBe(false);
  expect(reader.goTo(0.5, 2)).toBe(false);
});
