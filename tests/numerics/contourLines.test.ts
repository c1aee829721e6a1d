import { describe, expect, it } from 'vitest';
import { contourLines } from '../../src/numerics/contourLines.ts';
import { roundSteps } from '../../src/numerics/roundSteps.ts';

const steps = (from: number, to: number, count: number): number[] =>
  Array.from({ length: count }, (_, i) => from + (i / (count - 1)) * (to - from));

const over = (xs: readonly number[], ys: readonly number[], f: (x: number, y: number) => number | null) =>
  ys.flatMap((y) => xs.map((x) => f(x, y)));

const lengthOf = (line: readonly { x: number; y: number }[]): number =>
  line.slice(1).reduce((sum, to, i) => sum + Math.hypot(to.x - line[i]!.x, to.y - line[i]!.y), 0);

describe('lines of equal value', () => {
  it('of x² + y² are a closed circle', () => {
    const axis = steps(-2, 2, 81);
    const lines = contourLines(
      axis,
      axis,
      over(axis, axis, (x, y) => x * x + y * y),
      1,
    );
    expect(lines).toHaveLength(1);
    const [circle] = lines;
    expect(circle![0]).toEqual(circle!.at(-1));
    for (const { x, y } of circle!) expect(Math.hypot(x, y)).toBeCloseTo(1, 3);
    // A polygon inscribed with steps of 0.05 is shorter by 1e-4 of 2π.
    expect(Math.abs(lengthOf(circle!) / (2 * Math.PI) - 1)).toBeLessThan(1e-3);
  });

  it('of a plane are one straight line from edge to edge, on uneven grids too', () => {
    const xs = [0, 1, 2, 4, 8, 16];
    const ys = [0, 3, 4, 10];
    const lines = contourLines(
      xs,
      ys,
      over(xs, ys, (x, y) => x + y),
      7,
    );
    expect(lines).toHaveLength(1);
    for (const { x, y } of lines[0]!) expect(x + y).toBeCloseTo(7, 12);
    expect(lengthOf(lines[0]!)).toBeCloseTo(7 * Math.SQRT2, 12);
  });

  it('part at a saddle as the bilinear surface does', () => {
    // z = x y on one cell from −1 to 2: the saddle lies at 0, so at +0.5 the line keeps to the corners where both have one sign.
    const axis = [-1, 2];
    const z = (x: number, y: number): number => x * y;
    const above = contourLines(axis, axis, over(axis, axis, z), 0.5);
    expect(above).toHaveLength(2);
    for (const line of above) expect(line.every(({ x, y }) => x > -0.9 || y > -0.9)).toBe(true);
    for (const line of above) {
      const middle = { x: (line[0]!.x + line[1]!.x) / 2, y: (line[0]!.y + line[1]!.y) / 2 };
      expect(Math.sign(middle.x)).toBe(Math.sign(middle.y));
    }
    const below = contourLines(axis, axis, over(axis, axis, z), -0.5);
    for (const line of below) {
      const middle = { x: (line[0]!.x + line[1]!.x) / 2, y: (line[0]!.y + line[1]!.y) / 2 };
      expect(Math.sign(middle.x)).toBe(-Math.sign(middle.y));
    }
  });

  it('stop at places without a value', () => {
    const axis = steps(0, 10, 11);
    const values = over(axis, axis, (x, y) => (x === 5 && y === 5 ? null : x));
    const lines = contourLines(axis, axis, values, 4.5);
    expect(lines).toHaveLength(2);
    for (const line of lines) for (const { x, y } of line) expect(x === 4.5 && (y <= 4 || y >= 6)).toBe(true);
  });

  it('are none beyond all values', () => {
    expect(contourLines([0, 1], [0, 1], [1, 2, 3, 4], 9)).toEqual([]);
  });
});

describe('round steps', () => {
  it.each([
    [311.2, 368.9, 8, [320, 330, 340, 350, 360]],
    [0, 1, 4, [0.2, 0.4, 0.6, 0.8]],
    [-3, 3, 5, [-2, -1, 0, 1, 2]],
  ])('lie strictly between %s and %s', (low, high, count, expected) => {
    expect(roundSteps(low, high, count)).toEqual(expected);
  });

  it('are none where there is nothing between', () => {
    expect(roundSteps(5, 5, 8)).toEqual([]);
  });
});
