import { describe, expect, it } from 'vitest';
import { nuAtMach, tableStateAt } from '../../../../src/physics/flow/gasTable.ts';
import type { Symmetry } from '../../../../src/physics/flow/points.ts';
import {
  type Boundary,
  carriedBy,
  frontAlong,
  marchTubes,
  pressureBoundary,
  type TubeMarch,
  wallBoundary,
  wallLine,
} from '../../../../src/physics/flow/streamtubes/index.ts';
import { nodesAlong, perfectTubes } from './perfectGas.ts';

const tubes = perfectTubes(1.4);
const DEGREE = Math.PI / 180;

function uniformFlow(symmetry: Symmetry, count: number, upper: Boundary): TubeMarch {
  const nu = nuAtMach(tubes.table, 3);
  return marchTubes({
    gas: tubes.gas,
    front: frontAlong(
      tubes.gas,
      symmetry,
      nodesAlong(tubes.table, count, (t) => [0, t, 0, nu]),
      count,
    ),
    lower: [{ kind: 'axis' }],
    upper: [upper],
    axialEnd: 9.9,
  });
}

/** Uniform flow of Mach number `mach` over a wall that turns by `turn` [rad] at x = 0; marched to x = 1. */
function corner(mach: number, turn: number, count: number): TubeMarch {
  const nu = nuAtMach(tubes.table, mach);
  const line = wallLine([
    { axial: -0.001, radius: 0 },
    { axial: 0, radius: 0 },
    { axial: 1, radius: Math.tan(turn) },
  ]);
  return marchTubes({
    gas: tubes.gas,
    front: frontAlong(
      tubes.gas,
      'planar',
      nodesAlong(tubes.table, count, (t) => [-0.001, t, 0, nu]),
      count,
    ),
    lower: [wallBoundary(line)],
    upper: [pressureBoundary(tubes.gas, tableStateAt(tubes.table, nu).pressure)],
  });
}

describe('flow marched in streamtubes', () => {
  for (const symmetry of ['planar', 'axisymmetric'] as const) {
    it(`keeps uniform flow uniform between walls and beside still gas of its own pressure, ${symmetry}`, () => {
      const pressure = tableStateAt(tubes.table, nuAtMach(tubes.table, 3)).pressure;
      const wall = wallBoundary(
        wallLine([
          { axial: 0, radius: 1 },
          { axial: 10, radius: 1 },
        ]),
      );
      for (const upper of [wall, pressureBoundary(tubes.gas, pressure)]) {
        const { front, stopped } = uniformFlow(symmetry, 20, upper);
        expect(stopped).toBeNull();
        // What Newton's tolerance leaves after a hundred steps.
        for (const lnP of front.lnP) expect(Math.abs(lnP - Math.log(pressure))).toBeLessThan(1e-8);
        for (const theta of front.theta) expect(Math.abs(theta)).toBeLessThan(1e-8);
      }
    });
  }

  it('turns round a corner by Prandtl and Meyer, without loss beyond the first tube', () => {
    // NACA Report 1135: ν = 26.380° at M = 2; 46.380° behind a turn of 20°.
    const exact = tableStateAt(tubes.table, nuAtMach(tubes.table, 2) + 20 * DEGREE).pressure;
    const { front } = corner(2, -20 * DEGREE, 80);
    expect(Math.exp(front.faceLnP[0]!) / exact).toBeCloseTo(1, 3);
    for (const j of [1, 2, 3, 5, 8]) expect(Math.exp(front.lnP[j]!) / exact).toBeCloseTo(1, 2.5);
    for (const j of [2, 5, 20]) expect(Math.abs(front.lnSigma[j]!)).toBeLessThan(1e-4);
  });

  it('makes the oblique shock of the tables at a ramp, with its loss of stagnation pressure', () => {
    // NACA Report 1135, M = 3, 10°: p2/p1 = 2.0545, M2 = 2.5050; normal Mach number 3 sin 27.383° = 1.3798 → p02/p01 = 0.9631.
    const { front } = corner(3, 10 * DEGREE, 80);
    const before = tableStateAt(tubes.table, nuAtMach(tubes.table, 3)).pressure;
    expect(Math.exp(front.lnP[2]!) / before / 2.0545).toBeCloseTo(1, 3);
    expect(Math.exp(front.lnSigma[5]!)).toBeCloseTo(0.9631, 2.5);
    expect(Math.sqrt(1 + front.beta[5]! ** 2)).toBeCloseTo(2.505, 2);
  });

  it('says where the flow turns subsonic instead of going on', () => {
    // M = 3: no attached shock beyond 34.07° (NACA Report 1135).
    const { stopped } = corner(3, 38 * DEGREE, 40);
    expect(stopped?.code).toBe('flow-turns-subsonic');
  });

  it('converges to the exact source flow in a cone with order 2', () => {
    const half = 15 * DEGREE;
    const errorWith = (count: number): number => {
      const nu = nuAtMach(tubes.table, 2);
      const line = wallLine([1, 3].map((R) => ({ axial: R * Math.cos(half), radius: R * Math.sin(half) })));
      const { front } = marchTubes({
        gas: tubes.gas,
        front: frontAlong(
          tubes.gas,
          'axisymmetric',
          nodesAlong(tubes.table, count, (t) => [Math.cos(t * half), Math.sin(t * half), t * half, nu]),
          count,
        ),
        lower: [{ kind: 'axis' }],
        upper: [wallBoundary(line)],
      });
      const j = count - 1;
      const distance = Math.hypot(
        0.5 * (front.x[j]! + front.x[j + 1]!),
        0.5 * (front.r[j]! + front.r[j + 1]!),
      );
      // A/A* = 27/16 at M = 2 (NACA Report 1135); the area grows with the square of the distance from the source.
      const exact = tubes.expansion.atAreaRatio((27 / 16) * distance ** 2, 'supersonic').pressure;
      return Math.abs(Math.exp(front.lnP[j]!) / exact - 1);
    };
    const [coarse, fine] = [errorWith(10), errorWith(20)];
    expect(coarse).toBeLessThan(1e-3);
    expect(Math.log2(coarse / fine)).toBeGreaterThan(1.6);
  });

  it('accounts for the axial force on its walls and boundaries', () => {
    const nu = nuAtMach(tubes.table, 2.5);
    const pressure = 0.3 * tableStateAt(tubes.table, nu).pressure;
    const start = frontAlong(
      tubes.gas,
      'axisymmetric',
      nodesAlong(tubes.table, 40, (t) => [0, t, 0, nu]),
      40,
    );
    const before = carriedBy(start);
    const { front, upper, stopped } = marchTubes({
      gas: tubes.gas,
      front: start,
      lower: [{ kind: 'axis' }],
      upper: [pressureBoundary(tubes.gas, pressure)],
      axialEnd: 2,
    });
    expect(stopped).toBeNull();
    const after = carriedBy(front);
    expect(after.massFlow).toBe(before.massFlow);
    const force = 2 * Math.PI * upper.force[upper.count - 1]!;
    // The tubes at the corner keep their entropy rather than their momentum: 0.1 % of the whole.
    expect(Math.abs(after.axialForce + force - before.axialForce) / before.axialForce).toBeLessThan(1.5e-3);
  });
});
