import { describe, expect, test } from 'vitest';
import {
  nuAtMach,
  nuAtPressure,
  tableStateAt,
  tabulateSupersonic,
} from '../../../../src/physics/flow/gasTable.ts';
import { boundaryPointInto } from '../../../../src/physics/flow/jet/boundaryPoint.ts';
import { jetAcross, jetAlong, marchJet } from '../../../../src/physics/flow/jet/jet.ts';
import { compressAtLip, expandAtLip } from '../../../../src/physics/flow/jet/lipWave.ts';
import type { Jet } from '../../../../src/physics/flow/jet/model.ts';
import { lastWholeLine, netBalance, sideForceOf } from '../../../../src/physics/flow/netBalance.ts';
import { NODE, type Symmetry, setNodeInto } from '../../../../src/physics/flow/points.ts';
import { expandPerfect } from '../../../../src/physics/gas/index.ts';
import { cellLengthOverDiameter, fullyExpandedJet } from '../../../../src/physics/plume/cellLength.ts';
import { problemCode } from '../../problemCode.ts';

const expansion = expandPerfect({ gamma: 1.2, molarMass: 0.022, temperature: 3500, pressure: 1e7 });
const table = tabulateSupersonic(expansion, 1e7 * 1e-9);
const exitMach = 3;
const exitNu = nuAtMach(table, exitMach);
const exitPressure = expansion.atMach(exitMach).pressure;

/** Uniform parallel flow across a circle or slot of radius 1, nodes closer together towards the lip. */
function exitPlane(count: number, power = 2): Float64Array {
  const nodes = new Float64Array((count + 1) * NODE);
  for (let i = 0; i <= count; i++) {
    setNodeInto(nodes, i * NODE, table, 0, i === count ? 0 : 1 - (i / count) ** power, 0, exitNu);
  }
  return nodes;
}

interface Asked {
  readonly count: number;
  readonly rays?: number;
  readonly power?: number;
  readonly weakRise?: number;
  readonly limit?: number;
}

function jetInto(ambient: number, symmetry: Symmetry, asked: Asked): Jet {
  const boundaryNu = ambient === exitPressure ? exitNu : nuAtPressure(table, ambient);
  const jet = jetAcross(
    { table, symmetry, boundaryNu, axialLimit: asked.limit ?? 30, weakRise: asked.weakRise ?? 1 },
    exitPlane(asked.count, asked.power),
  );
  if (ambient > exitPressure) compressAtLip(jet);
  else expandAtLip(jet, asked.rays ?? asked.count);
  marchJet(jet);
  return jet;
}

const boundaryOf = ({ net, lipLine }: Jet): readonly { x: number; r: number; theta: number }[] =>
  Array.from({ length: net.lineCount - lipLine }, (_, i) => {
    const at = net.offset(lipLine + i, 0);
    return { x: net.nodes[at]!, r: net.nodes[at + 1]!, theta: net.nodes[at + 2]! };
  });

describe('a jet with a free boundary', () => {
  test.each(['planar', 'axisymmetric'] as const)(
    'uniform flow at ambient pressure stays as it is: %s',
    (symmetry) => {
      const jet = jetInto(exitPressure, symmetry, { count: 16 });
      const boundary = boundaryOf(jet);
      expect(boundary[boundary.length - 1]!.x).toBeGreaterThan(29);
      expect(jet.crossing).toBeNull();
      // Rounding of the table's own interpolation, some 1e-9.
      for (let i = 0; i < jet.net.nodeCount; i++) {
        expect(Math.abs(jet.net.nodes[i * NODE + 2]!)).toBeLessThan(1e-6);
        expect(Math.abs(jet.net.nodes[i * NODE + 3]! - exitNu)).toBeLessThan(1e-6);
      }
      for (const { r } of boundary) expect(Math.abs(r - 1)).toBeLessThan(1e-5);
    },
  );

  test('the corner is a Prandtl–Meyer expansion: straight rays of one state each in plane flow, exactly', () => {
    const rays = 12;
    const jet = jetInto(exitPressure / 3, 'planar', { count: 12, rays });
    const { net, lipLine } = jet;
    for (let ray = 1; ray <= rays; ray++) {
      const line = lipLine - rays + ray;
      const lip = net.offset(line, 0);
      // θ − ν is that of the exit flow; the ray's nodes above the first reflected wave carry the lip's state.
      expect(net.nodes[lip + 2]! - net.nodes[lip + 3]!).toBeCloseTo(-exitNu, 12);
      for (let k = 1; k < 12; k++) {
        const at = net.offset(line, k);
        expect(net.nodes[at + 3]).toBeCloseTo(net.nodes[lip + 3]!, 9);
        const direction = net.nodes[lip + 2]! - net.nodes[lip + 4]!;
        const along = Math.atan2(net.nodes[at + 1]! - 1, net.nodes[at]!);
        expect(along).toBeCloseTo(direction, 9);
      }
    }
  });

  test('the plane jet: straight boundary at Δν, 2Δν on the axis behind the fan, then a boundary at −Δν', () => {
    // Simple-wave theory, closed form: fan from the lip, reflected as an expansion from the axis and as a compression from
    // the boundary (A. H. Shapiro, Compressible Fluid Flow, ch. 15; from memory).
    const jet = jetInto(exitPressure / 1.3, 'planar', { count: 24 });
    const turn = jet.boundaryNu - exitNu;
    const boundary = boundaryOf(jet);
    expect(boundary[0]!.theta).toBeCloseTo(turn, 10);
    expect(boundary[3]!.theta).toBeCloseTo(turn, 6);
    expect(boundary[boundary.length - 1]!.theta).toBeCloseTo(-turn, 6);
    const axis = jet.net.offset(jet.lipLine + 1, jet.net.lineLength(jet.lipLine + 1) - 1);
    expect(jet.net.nodes[axis + 3]).toBeCloseTo(exitNu + 2 * turn, 6);
    // It comes back as far as it went: the second half of the cell mirrors the first.
    const highest = boundary.reduce((a, b) => (b.r > a.r ? b : a));
    expect(highest.r).toBeGreaterThan(1 + 0.5 * turn);
  });

  test('a boundary of the pressure of source flow is the source’s own ray, of second order', () => {
    // Spherical source, sonic at distance 1: area ratio R². The streamline at 15° is straight; its pressure is given.
    const angle = Math.PI / 12;
    const nuAt = (distance: number): number =>
      nuAtPressure(table, expansion.atAreaRatio(distance * distance, 'supersonic').pressure);
    const misses = [0.1, 0.05].map((step) => {
      const nodes = new Float64Array(3 * NODE);
      const put = (at: number, distance: number, theta: number): void =>
        setNodeInto(
          nodes,
          at,
          table,
          distance * Math.cos(theta),
          distance * Math.sin(theta),
          theta,
          nuAt(distance),
        );
      put(0, 3, angle);
      // A foot on a neighbouring streamline, whose C+ reaches the boundary a step further on.
      put(NODE, 3, angle - 0.4 * step);
      let nu = nuAt(3);
      for (let i = 0; i < 30; i++) {
        boundaryPointInto(nodes, 2 * NODE, table, 'axisymmetric', 0, NODE, nu);
        nu = nuAt(Math.hypot(nodes[2 * NODE]!, nodes[2 * NODE + 1]!));
      }
      return Math.abs(nodes[2 * NODE + 2]! - angle);
    });
    expect(misses[0]!).toBeLessThan(2e-4);
    // A step's error is of third order, so that of a march is of second.
    expect(misses[0]! / misses[1]!).toBeGreaterThan(6);
  });

  test('a start along a C− and one across the exit are the same jet', () => {
    const ambient = exitPressure / 1.5;
    const across = jetInto(ambient, 'axisymmetric', { count: 24 });
    const line = new Float64Array(25 * NODE);
    const { mu } = tableStateAt(table, exitNu);
    for (let i = 0; i <= 24; i++) {
      const r = i === 24 ? 0 : 1 - (i / 24) ** 2;
      setNodeInto(line, i * NODE, table, (1 - r) / Math.tan(mu), r, 0, exitNu);
    }
    const along = jetAlong(
      {
        table,
        symmetry: 'axisymmetric',
        boundaryNu: nuAtPressure(table, ambient),
        axialLimit: 30,
        weakRise: 1,
      },
      line,
    );
    expandAtLip(along, 24);
    marchJet(along);
    expect(radiusAt(boundaryOf(along), 3)).toBeCloseTo(radiusAt(boundaryOf(across), 3), 3);
  });

  test('the outline and the first crossing of a round jet settle as the net is refined', () => {
    const runs = [16, 32, 64].map((count) => jetInto(exitPressure / 1.2, 'axisymmetric', { count }));
    const radii = runs.map((jet) => radiusAt(boundaryOf(jet), 4));
    expect(Math.abs(radii[1]! - radii[2]!)).toBeLessThan(2e-4);
    const places = runs.map(({ crossing }) => crossing!.axial);
    expect(Math.abs(places[1]! / places[2]! - 1)).toBeLessThan(0.01);
  });

  test.each([1.05, 1.2])('p_e/p_a = %f: widest half-way along the cell of the linear wave', (ratio) => {
    // D. C. Pack 1950, to 12 %: that wave is infinitely weak, and its jet infinitely little wider than its exit.
    const jet = jetInto(exitPressure / ratio, 'axisymmetric', { count: 32 });
    const boundary = boundaryOf(jet);
    const top = boundary.reduce((a, b) => (b.r > a.r ? b : a));
    const { mach, diameter } = fullyExpandedJet(expansion, exitPressure / ratio);
    const exitDiameter = fullyExpandedJet(expansion, exitPressure).diameter;
    const cell = (2 * diameter * cellLengthOverDiameter(mach)) / exitDiameter;
    expect(Math.abs(top.x / (cell / 2) - 1)).toBeLessThan(0.12);
  });

  test.each(['planar', 'axisymmetric'] as const)('keeps mass, momentum and energy: %s', (symmetry) => {
    for (const ratio of [1.2, 2]) {
      const ambient = exitPressure / ratio;
      const jet = jetInto(ambient, symmetry, { count: 40 });
      const to = lastWholeLine(jet.net);
      const r = jet.net.nodes[jet.net.offset(to, 0) + 1]!;
      const from = 40;
      const balance = netBalance({
        net: jet.net,
        table,
        symmetry,
        expansion,
        from,
        to,
        sideForce: sideForceOf(ambient, symmetry, 1, r),
      });
      expect(Math.abs(balance.mass)).toBeLessThan(2e-4);
      expect(Math.abs(balance.momentum)).toBeLessThan(2e-4);
      expect(balance.energy).toBeLessThan(1e-8);
    }
  });

  test('weak over-expansion: the boundary turns in by the shock’s angle, comes to a waist and out again', () => {
    const jet = jetInto(exitPressure / 0.9, 'axisymmetric', { count: 32, weakRise: 1.5 });
    const boundary = boundaryOf(jet);
    const waist = boundary.reduce((a, b) => (b.r < a.r ? b : a));
    expect(boundary[0]!.theta).toBeLessThan(0);
    expect(waist.r).toBeLessThan(0.97);
    expect(boundary[boundary.length - 1]!.r).toBeGreaterThan(waist.r);
    expect(jet.crossing).toMatchObject({ axial: 0, radius: 1 });
  });

  test('a shock that is too strong to be carried leaves nothing but the lip', () => {
    const jet = jetInto(exitPressure * 1.7, 'axisymmetric', { count: 16, weakRise: 1.5 });
    expect(boundaryOf(jet).length).toBe(1);
  });

  test('does not expand against a higher pressure', () => {
    const jet = jetAcross(
      {
        table,
        symmetry: 'planar',
        boundaryNu: nuAtPressure(table, 1.1 * exitPressure),
        axialLimit: 5,
        weakRise: 1,
      },
      exitPlane(8),
    );
    expect(problemCode(() => expandAtLip(jet, 8))).toBe('shock-at-lip');
  });
});

function radiusAt(boundary: readonly { x: number; r: number }[], x: number): number {
  const next = boundary.findIndex((point) => point.x >= x);
  const to = boundary[next]!;
  const from = boundary[next - 1]!;
  return from.r + ((x - from.x) / (to.x - from.x)) * (to.r - from.r);
}
