import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type ChamberShape,
  type Contour,
  chamberAndNozzleContour,
  defaultChamberShape,
  type NozzleSpec,
  referenceConeLength,
  usualContractionRatio,
} from '../../../src/physics/nozzle/index.ts';
import { tabulatedBellAngles } from '../../../src/physics/nozzle/tabulatedAngles.ts';
import { problemCode } from '../problemCode.ts';
import { degrees } from './perfectGas.ts';

const SHAPE: ChamberShape = { contractionRatio: 3, characteristicLength: 1, convergingAngle: degrees(30) };
const RADIUS = 0.1;

const SPECS: readonly NozzleSpec[] = [
  { kind: 'cone', areaRatio: 25, halfAngle: degrees(15) },
  { kind: 'cone', areaRatio: 3, halfAngle: degrees(8) },
  { kind: 'bell', areaRatio: 25, length: 0.8 },
  { kind: 'bell', areaRatio: 5, length: 0.6 },
  { kind: 'bell', areaRatio: 100, length: 1 },
  { kind: 'bell', areaRatio: 900, length: 0.8, throatAngle: degrees(38), lipAngle: degrees(5) },
  { kind: 'ideal', areaRatio: 40 },
  { kind: 'ideal', areaRatio: 1.001 },
  { kind: 'adapting', areaRatio: 60 },
];

/** Volume and area between wall points by a cubic through both ends and both slopes, Simpson's rule: independent of the exact formulas. */
function revolve(contour: Contour, from: number, to: number): { volume: number; area: number } {
  let volume = 0;
  let area = 0;
  const { wall } = contour;
  for (let i = 1; i < wall.length; i++) {
    const a = wall[i - 1]!;
    const b = wall[i]!;
    if (a.axial < from - 1e-12 || b.axial > to + 1e-12) continue;
    const h = b.axial - a.axial;
    const [m, n] = [Math.tan(a.angle), Math.tan(b.angle)];
    const middle = (a.radius + b.radius) / 2 + ((m - n) * h) / 8;
    const slope = (1.5 * (b.radius - a.radius)) / h - (m + n) / 4;
    volume += ((Math.PI * h) / 6) * (a.radius ** 2 + 4 * middle ** 2 + b.radius ** 2);
    area +=
      ((2 * Math.PI * h) / 6) *
      (a.radius * Math.hypot(1, m) + 4 * middle * Math.hypot(1, slope) + b.radius * Math.hypot(1, n));
  }
  return { volume, area };
}

describe.each(SPECS)('$kind, area ratio $areaRatio', (spec) => {
  const contour = chamberAndNozzleContour(spec, RADIUS, SHAPE);
  const { wall } = contour;

  test('runs from the injector face through the throat to the lip', () => {
    expect(wall[0]).toMatchObject({
      axial: -contour.chamberLength,
      radius: contour.chamberRadius,
      part: 'chamber',
    });
    expect(wall.at(-1)!.axial).toBeCloseTo(contour.nozzleLength, 12);
    expect(wall.at(-1)!.radius).toBeCloseTo(RADIUS * Math.sqrt(spec.areaRatio), 12);
    expect(contour.totalLength).toBeCloseTo(contour.nozzleLength + contour.chamberLength, 12);
    const narrowest = wall.filter((point) => point.axial === 0);
    expect(narrowest.length).toBe(1);
    expect(narrowest[0]!.radius).toBeCloseTo(RADIUS, 12);
    expect(Math.min(...wall.map((point) => point.radius))).toBeCloseTo(RADIUS, 12);
    expect(wall.length).toBeLessThan(120);
    for (let i = 1; i < wall.length; i++) expect(wall[i]!.axial).toBeGreaterThan(wall[i - 1]!.axial);
  });

  // A chord turns by at most one arc step or one piece of the parabola; a kink would stand out as more.
  test('bends without a kink: each chord lies between the wall angles of its ends', () => {
    for (let i = 1; i < wall.length; i++) {
      const [a, b] = [wall[i - 1]!, wall[i]!];
      const chord = Math.atan2(b.radius - a.radius, b.axial - a.axial);
      expect(chord).toBeGreaterThan(Math.min(a.angle, b.angle) - 1e-9);
      expect(chord).toBeLessThan(Math.max(a.angle, b.angle) + 1e-9);
      expect(Math.abs(b.angle - a.angle)).toBeLessThan(degrees(5.5));
    }
  });

  test('no chord leaves the curve by more than 1 % of the throat radius', () => {
    for (let i = 1; i < wall.length; i++) {
      const [a, b] = [wall[i - 1]!, wall[i]!];
      const sag = (Math.hypot(b.axial - a.axial, b.radius - a.radius) * Math.abs(b.angle - a.angle)) / 8;
      expect(sag).toBeLessThan(0.01 * RADIUS);
    }
  });

  test('the chamber holds L* times the throat area (1e-4: quadrature over the points)', () => {
    const { volume, area } = revolve(contour, -contour.chamberLength, 0);
    expect(Math.abs(volume / (1 * Math.PI * RADIUS ** 2) - 1)).toBeLessThan(1e-4);
    expect(Math.abs(area / contour.chamberArea - 1)).toBeLessThan(1e-3);
  });

  test('the nozzle wall area agrees with quadrature (1e-3)', () => {
    const { area } = revolve(contour, 0, contour.nozzleLength);
    expect(Math.abs(area / contour.nozzleArea - 1)).toBeLessThan(1e-3);
  });

  test('scales with the throat', () => {
    const larger = chamberAndNozzleContour(spec, 10 * RADIUS, { ...SHAPE, characteristicLength: 10 });
    expect(larger.wall.length).toBe(wall.length);
    for (const [i, point] of larger.wall.entries()) {
      expect(point.radius / 10).toBeCloseTo(wall[i]!.radius, 10);
      expect(point.axial / 10).toBeCloseTo(wall[i]!.axial, 10);
    }
    expect(larger.nozzleArea / 100).toBeCloseTo(contour.nozzleArea, 10);
  });
});

describe('published shapes', () => {
  /** NASA SP-125 (from memory): L = [R_t(√ε − 1) + R_1 (sec α − 1)]/tan α. */
  test('length of a cone with its throat arc', () => {
    for (const angle of [10, 15, 20].map(degrees)) {
      const contour = chamberAndNozzleContour({ kind: 'cone', areaRatio: 25, halfAngle: angle }, 1, {
        ...SHAPE,
        characteristicLength: 10,
      });
      const expected = (4 + 0.382 * (1 / Math.cos(angle) - 1)) / Math.tan(angle);
      expect(contour.nozzleLength).toBeCloseTo(expected, 12);
    }
  });

  test('a bell has its share of the 15° cone in the simple form, 8.07 R_t at area ratio 10', () => {
    const contour = chamberAndNozzleContour({ kind: 'bell', areaRatio: 10, length: 0.8 }, RADIUS, SHAPE);
    expect(contour.nozzleLength).toBeCloseTo(0.8 * RADIUS * referenceConeLength(10), 12);
    expect(contour.nozzleLength / RADIUS).toBeCloseTo(6.45, 1);
    const { throatAngle, lipAngle } = tabulatedBellAngles(10, 0.8);
    expect(contour.steepestAngle).toBeCloseTo(throatAngle, 12);
    expect(contour.lipAngle).toBeCloseTo(lipAngle, 12);
  });

  /** The Bézier points satisfy one quadratic form: (x − a r)² is linear in x and r for the parabola's axis direction a. */
  test('the bell is a parabola', () => {
    const contour = chamberAndNozzleContour({ kind: 'bell', areaRatio: 30, length: 0.8 }, 1, {
      ...SHAPE,
      characteristicLength: 10,
    });
    const points = contour.wall.filter((point) => point.part === 'nozzle');
    // Equal steps of the parameter: third differences of a quadratic vanish.
    let compared = 0;
    for (let i = 3; i < points.length; i++) {
      for (const of of ['axial', 'radius'] as const) {
        const third = points[i]![of] - 3 * points[i - 1]![of] + 3 * points[i - 2]![of] - points[i - 3]![of];
        expect(Math.abs(third)).toBeLessThan(1e-12);
        compared++;
      }
    }
    expect(compared).toBeGreaterThan(20);
  });

  /** SP-125's sample booster engine (from memory): A_t 487 in², L* 45 in, contraction ratio 1.6, area ratio 14. */
  test('chamber of the sample booster engine', () => {
    const radius = (24.9 * 0.0254) / 2;
    const contour = chamberAndNozzleContour({ kind: 'bell', areaRatio: 14, length: 0.8 }, radius, {
      contractionRatio: 1.6,
      characteristicLength: 45 * 0.0254,
      convergingAngle: degrees(20),
    });
    const { volume } = revolve(contour, -contour.chamberLength, 0);
    expect(Math.abs(volume / 0.0254 ** 3 / (45 * 487) - 1)).toBeLessThan(5e-3);
    expect((2 * contour.exitRadius) / 0.0254).toBeCloseTo(24.9 * Math.sqrt(14), 6);
  });
});

describe('chamber defaults', () => {
  /** Humble, Henry, Larson 1995 (from memory): 8 d^−0.6 + 1.25, d in cm; d = 1 → 9.25 exactly, 10 → 3.2595. */
  test('contraction ratio by throat size', () => {
    expect(usualContractionRatio(0.01)).toBeCloseTo(9.25, 12);
    expect(usualContractionRatio(0.1)).toBeCloseTo(3.2595, 4);
    expect(defaultChamberShape(0.1).contractionRatio).toBe(usualContractionRatio(0.1));
    expect(problemCode(() => usualContractionRatio(3))).toBe('throat-outside-contraction-fit');
    expect(problemCode(() => usualContractionRatio(Number.NaN))).toBe('throat-outside-contraction-fit');
  });

  test('can be drawn for every throat of 5 mm to 1 m', () => {
    for (let diameter = 0.005; diameter <= 1; diameter *= 1.2) {
      const contour = chamberAndNozzleContour(
        { kind: 'bell', areaRatio: 16, length: 0.8 },
        diameter / 2,
        defaultChamberShape(diameter),
      );
      expect(contour.chamberLength).toBeGreaterThan(0);
    }
  });
});

test('any chamber is either drawn with its volume right or refused with a mend', () => {
  const seen = new Set<string>();
  fc.assert(
    fc.property(
      fc.double({ min: 1.01, max: 12, noNaN: true }),
      fc.double({ min: 0.05, max: 3, noNaN: true }),
      fc.double({ min: 6, max: 70, noNaN: true }),
      (contractionRatio, characteristicLength, angle) => {
        const shape = { contractionRatio, characteristicLength, convergingAngle: degrees(angle) };
        const draw = () => chamberAndNozzleContour({ kind: 'ideal', areaRatio: 20 }, RADIUS, shape);
        const code = problemCode(draw);
        seen.add(code);
        if (code !== 'none') {
          expect(['contraction-too-small', 'chamber-too-short']).toContain(code);
          return;
        }
        const contour = draw();
        const { volume } = revolve(contour, -contour.chamberLength, 0);
        expect(Math.abs(volume / (characteristicLength * Math.PI * RADIUS ** 2) - 1)).toBeLessThan(1e-3);
      },
    ),
    { numRuns: 300, seed: 7 },
  );
  expect([...seen].sort()).toEqual(['chamber-too-short', 'contraction-too-small', 'none']);
});

describe('refusals', () => {
  test.each([
    [{ kind: 'cone', areaRatio: 1.01, halfAngle: degrees(15) }, RADIUS, 'cone-within-throat-arc'],
    [{ kind: 'ideal', areaRatio: 20 }, 0, 'size-not-positive'],
    [{ kind: 'ideal', areaRatio: 20 }, Number.NaN, 'size-not-positive'],
    [{ kind: 'ideal', areaRatio: 0.5 }, RADIUS, 'area-ratio-outside-range'],
    [{ kind: 'cone', areaRatio: 20, halfAngle: 2 }, RADIUS, 'cone-angle-outside-range'],
  ] as const)('%o', (spec, radius, code) => {
    expect(problemCode(() => chamberAndNozzleContour(spec, radius, SHAPE))).toBe(code);
  });

  test('chamber shapes that are none', () => {
    const bad = [
      { ...SHAPE, contractionRatio: 1 },
      { ...SHAPE, characteristicLength: 0 },
      { ...SHAPE, characteristicLength: Number.NaN },
      { ...SHAPE, convergingAngle: degrees(80) },
    ];
    for (const shape of bad) {
      expect(
        problemCode(() => chamberAndNozzleContour({ kind: 'ideal', areaRatio: 20 }, RADIUS, shape)),
      ).toBe('chamber-shape-invalid');
    }
  });
});
