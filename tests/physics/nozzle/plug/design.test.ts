import { describe, expect, test } from 'vitest';
import { flowAcross } from '../../../../src/physics/flow/axialFlow.ts';
import { nuAtMach, tableStateAt } from '../../../../src/physics/flow/gasTable.ts';
import { straightRayRadius } from '../../../../src/physics/flow/plugWall.ts';
import { NODE } from '../../../../src/physics/flow/points.ts';
import { DEFAULT_ASPECT_RATIO, plugDesign, plugSize } from '../../../../src/physics/nozzle/plug/design.ts';
import type { PlugSpec } from '../../../../src/physics/nozzle/plug/spec.ts';
import { areaRatioAtMach } from '../../flow/closedForms.ts';
import { problemCode } from '../../problemCode.ts';
import { degrees, perfectGas } from '../perfectGas.ts';

const annular = { kind: 'plug', form: 'annular', kept: 1 } as const;

function design(gamma: number, spec: PlugSpec) {
  const gas = perfectGas({ gamma, pressure: 1e7 });
  return plugDesign(spec, gas, gas.atAreaRatio(spec.areaRatio, 'supersonic'));
}

/**
 * Ideal whole plug with external expansion: place of the wall at M = 1, at three quarters of the way and at the tip, over
 * the lip's radius. G. Angelino, AIAA J. 2(10), 1964 (formula from memory); numbers recomputed from it.
 */
const angelino = [
  {
    mach: 3,
    gamma: 1.4,
    turn: 49.757,
    areaRatio: 4.2346,
    throat: [-0.0939, 0.9206],
    rest: [
      [1.5, 0.0423, 0.7682],
      [2, 0.2971, 0.6003],
      [2.5, 0.9513, 0.3532],
    ],
    tip: 2.8284,
  },
  {
    mach: 3,
    gamma: 1.2,
    turn: 63.654,
    areaRatio: 6.7354,
    throat: [-0.0677, 0.9665],
    rest: [
      [1.5, -0.0047, 0.8554],
      [2, 0.1525, 0.7108],
      [2.5, 0.6814, 0.4527],
    ],
    tip: 2.8284,
  },
  {
    mach: 3.5,
    gamma: 1.25,
    turn: 71.171,
    areaRatio: 10.984,
    throat: [-0.0434, 0.9852],
    rest: [
      [1.625, -0.0032, 0.8982],
      [2.25, 0.1403, 0.762],
      [2.875, 0.7127, 0.4944],
    ],
    tip: 3.3541,
  },
] as const;

describe.each(angelino)('a whole, purely external plug for Mach $mach, γ $gamma', (row) => {
  const made = design(row.gamma, {
    ...annular,
    areaRatio: areaRatioAtMach(row.mach, row.gamma),
    innerMach: 1,
  });
  const lip = made.lip.radius;

  test('turns the flow by ν(M_e) at the lip and has the area ratio of M_e', () => {
    expect(made.areaRatio).toBeCloseTo(row.areaRatio, 3);
    expect((made.nuExit * 180) / Math.PI).toBeCloseTo(row.turn, 2);
    expect(lip ** 2).toBeCloseTo(row.areaRatio, 3);
  });

  test('ends at √(M_e² − 1) lip radii, exactly', () => {
    const tip = made.wall.at(-1)!;
    expect(tip.radius).toBe(0);
    expect(tip.axial / lip).toBeCloseTo(row.tip, 4);
    expect(tip.axial / lip).toBeCloseTo(Math.sqrt(row.mach ** 2 - 1), 6);
  });

  test('the straight rays of Angelino go through the printed points', () => {
    const areaThroat = Math.PI;
    for (const [mach, x, r] of [[1, ...row.throat], ...row.rest] as [number, number, number][]) {
      const nu = mach === 1 ? 0 : nuAtMach(made.table, mach);
      const phi = made.nuExit - nu + (mach === 1 ? Math.PI / 2 : Math.asin(1 / mach));
      const radius = straightRayRadius(lip, areaThroat, areaRatioAtMach(mach, row.gamma), mach, phi) / lip;
      expect(radius).toBeCloseTo(r, 3);
      expect((1 - radius) / Math.tan(phi)).toBeCloseTo(x, 3);
    }
  });

  test('its wall by characteristics lies within 3 % of the lip radius of that of Angelino', () => {
    // Order 1 % is said of his approximation (from memory); against his own points it is up to 3 %.
    for (const [, x, r] of row.rest) {
      const i = made.wall.findIndex((point) => point.axial / lip >= x);
      const [a, b] = [made.wall[i - 1]!, made.wall[i]!];
      const exact = a.radius + ((b.radius - a.radius) * (x * lip - a.axial)) / (b.axial - a.axial);
      expect(Math.abs(exact / lip - r)).toBeLessThan(0.03);
    }
  });

  test('has its throat upstream of the lip, as every plug whose flow turns by less than 90°', () => {
    expect(made.wall[0]!.axial).toBeLessThan(0);
  });
});

/** Thrust of the walls and the throat line in vacuum over that of the exit flow. */
function thrustOverIdeal(made: ReturnType<typeof design>): number {
  const round = made.symmetry === 'axisymmetric';
  const area = (r: number): number => (round ? Math.PI * r * r : r);
  const pressure = (nu: number): number => tableStateAt(made.table, nu).pressure;
  let force = flowAcross(
    made.throatLine,
    0,
    made.throatLine.length / NODE,
    made.table,
    made.symmetry,
  ).axialForce;
  for (const [wall, side] of [
    [made.wall, 1],
    [made.cowl, -1],
  ] as const) {
    for (let i = 1; i < wall.length; i++) {
      const [a, b] = [wall[i - 1]!, wall[i]!];
      force += side * 0.5 * (pressure(a.nu) + pressure(b.nu)) * (area(a.radius) - area(b.radius));
    }
  }
  const exit = tableStateAt(made.table, made.nuExit);
  return force / (made.massFlow * exit.speed + exit.pressure * area(made.lip.radius));
}

describe('expansion inside and outside', () => {
  const cases = [
    ['annular', 1.2, 60, undefined],
    ['annular', 1.13, 60, 2],
    ['annular', 1.25, 15, 1],
    ['annular', 1.4, 6, 2.2],
    ['linear', 1.2, 60, undefined],
    ['linear', 1.2, 25, 1.5],
    ['linear', 1.4, 12.79, 1],
  ] as const;

  test.each(cases)(
    '%s, γ %d, ε %d, inner Mach %s: walls and throat push like the ideal nozzle, within 0.2 %%',
    (form, gamma, areaRatio, innerMach) => {
      const made = design(gamma, {
        kind: 'plug',
        form,
        areaRatio,
        kept: 1,
        ...(innerMach !== undefined && { innerMach }),
      });
      expect(Math.abs(thrustOverIdeal(made) - 1)).toBeLessThan(2e-3);
    },
  );

  test.each(cases)(
    '%s, γ %d, ε %d, inner Mach %s: each ray and the throat line carry the same flow',
    (form, gamma, areaRatio, innerMach) => {
      const made = design(gamma, {
        kind: 'plug',
        form,
        areaRatio,
        kept: 1,
        ...(innerMach !== undefined && { innerMach }),
      });
      for (const line of [made.throatLine, made.lipRay, ...made.rays]) {
        const { massFlow } = flowAcross(line, 0, line.length / NODE, made.table, made.symmetry);
        // 0.05 %: the least that a net must keep; these end where the flow closes.
        expect(Math.abs(massFlow / made.massFlow - 1)).toBeLessThan(5e-4);
      }
      const gas = perfectGas({ gamma, pressure: 1e7 });
      expect((made.massFlow * made.areaScale) / gas.throat.massFlux).toBeCloseTo(1, 5);
    },
  );

  test('planar: the throat points 2 ν_i − ν_e, the cowl and the inner plug side are a simple wave', () => {
    const made = design(1.3, { kind: 'plug', form: 'linear', areaRatio: 30, kept: 1, innerMach: 2 });
    const expected = 2 * made.nuLip - made.nuExit;
    // The line begins at Mach 1.005, a thousandth of a radian past sonic.
    expect(Math.abs(made.throatAngle - expected)).toBeLessThan(2e-3);
    for (const point of made.cowl) {
      // Across the corner's fan θ + ν keeps its value: that of the uniform flow before the lip.
      expect(point.angle + point.nu).toBeCloseTo(made.nuLip + (made.nuLip - made.nuExit), 9);
    }
  });

  test('the walls go the way the flow goes', () => {
    const made = design(1.2, { ...annular, areaRatio: 60 });
    for (const wall of [made.wall, made.cowl]) {
      for (let i = 1; i + 1 < wall.length; i++) {
        const [a, b] = [wall[i - 1]!, wall[i]!];
        const slope = Math.atan2(b.radius - a.radius, b.axial - a.axial);
        expect(Math.abs(slope - 0.5 * (a.angle + b.angle))).toBeLessThan(degrees(1));
      }
    }
  });

  test('the default keeps the turn at the lip within 60°, and is purely external where less is needed', () => {
    const wide = design(1.2, { ...annular, areaRatio: 60 });
    expect(wide.nuExit - wide.nuLip).toBeCloseTo(Math.PI / 3, 9);
    const small = design(1.4, { ...annular, areaRatio: 3 });
    expect(small.cowl).toHaveLength(1);
    expect(tableStateAt(small.table, small.nuLip).mach).toBeLessThan(1.3);
  });
});

describe('a ring of huge radius', () => {
  const gapOf = (made: ReturnType<typeof design>): number => {
    const end = made.throatLine.length - NODE;
    const [dx, dr] = [
      made.throatLine[0]! - made.throatLine[end]!,
      made.throatLine[1]! - made.throatLine[end + 1]!,
    ];
    return Math.hypot(dx, dr);
  };

  test('has the gap that its throat area asks for, as the linear one', () => {
    const linear = design(1.2, { kind: 'plug', form: 'linear', areaRatio: 40, kept: 1, innerMach: 2.2 });
    const ring = design(1.2, { ...annular, areaRatio: 40, innerMach: 2.2 });
    const middle = 0.5 * (ring.throatLine[1]! + ring.throatLine[ring.throatLine.length - NODE + 1]!);
    // The line is a ray at Mach 1.005 to 1.03, up to 2 % longer than the sonic line square to the flow.
    expect(Math.abs((gapOf(ring) * 2 * Math.PI * middle) / Math.PI - 1)).toBeLessThan(0.02);
    expect(Math.abs((gapOf(linear) * 2 * linear.width!) / Math.PI - 1)).toBeLessThan(0.01);
  });

  test('comes nearer to it in proportion to gap over radius', () => {
    const gamma = 1.4;
    const miss = [10, 40, 160].map((areaRatio) => {
      const make = (form: 'annular' | 'linear') =>
        design(gamma, { kind: 'plug', form, areaRatio, kept: 1, innerMach: 1.8 });
      const foot = (made: ReturnType<typeof make>): number =>
        (made.lip.radius - made.wall[made.lipRayFoot]!.radius) / gapOf(made);
      return Math.abs(foot(make('annular')) / foot(make('linear')) - 1);
    });
    expect(miss[1]!).toBeLessThan(0.5 * miss[0]!);
    expect(miss[2]!).toBeLessThan(0.5 * miss[1]!);
  });
});

describe('size', () => {
  test('annular: lip radius √ε throat radii', () => {
    expect(plugSize({ ...annular, areaRatio: 25 }).lipRadius).toBeCloseTo(5, 12);
  });

  test('linear: area and aspect ratio', () => {
    for (const aspectRatio of [undefined, 0.5, 8]) {
      const spec = {
        kind: 'plug',
        form: 'linear',
        areaRatio: 30,
        kept: 1,
        ...(aspectRatio && { aspectRatio }),
      } as const;
      const { lipRadius, width } = plugSize(spec);
      expect(2 * lipRadius * width!).toBeCloseTo(30 * Math.PI, 9);
      expect(width! / (2 * lipRadius)).toBeCloseTo(aspectRatio ?? DEFAULT_ASPECT_RATIO, 9);
    }
  });
});

describe('what cannot be is refused with what would do', () => {
  test('a turn past 90°: the γ of real propellants and a large area ratio', () => {
    const bad = (): unknown => design(1.2, { ...annular, areaRatio: 60, innerMach: 1 });
    expect(problemCode(bad)).toBe('plug-turn-too-large');
    expect(bad).toThrow(
      /turn the flow by 98\.\d°.*innerMach above 1\.\d\d would do, 2\.\d\d turns the flow by 60°/s,
    );
  });

  test('ν_e reaches 90° near Mach 4.07 at γ 1.2', () => {
    const external = (mach: number): unknown =>
      design(1.2, { ...annular, areaRatio: areaRatioAtMach(mach, 1.2), innerMach: 1 });
    expect(problemCode(() => external(4.15))).toBe('plug-turn-too-large');
    expect(() => external(4)).not.toThrow();
  });

  test('an inner Mach number at the exit’s', () => {
    expect(problemCode(() => design(1.4, { ...annular, areaRatio: 4.2346, innerMach: 3.1 }))).toBe(
      'inner-mach-too-large',
    );
  });
});
