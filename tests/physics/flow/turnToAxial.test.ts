import { describe, expect, test } from 'vitest';
import { flowAcross } from '../../../src/physics/flow/axialFlow.ts';
import { marchFan } from '../../../src/physics/flow/centredFan.ts';
import { nuAtMach, tableStateAt, tabulateSupersonic } from '../../../src/physics/flow/gasTable.ts';
import type { March } from '../../../src/physics/flow/lineMarch.ts';
import { CharacteristicNet } from '../../../src/physics/flow/net.ts';
import { NODE, type Symmetry, setNodeInto } from '../../../src/physics/flow/points.ts';
import { throatCharacteristic } from '../../../src/physics/flow/startLine.ts';
import { type ShapedWallPoint, turnToAxial } from '../../../src/physics/flow/turnToAxial.ts';
import { marchAlongWall } from '../../../src/physics/flow/wallMarch.ts';
import { expandPerfect } from '../../../src/physics/gas/index.ts';
import { areaRatioAtMach } from './closedForms.ts';

function gasOf(gamma: number) {
  const expansion = expandPerfect({ gamma, molarMass: 0.022, temperature: 3500, pressure: 1e7 });
  return { expansion, table: tabulateSupersonic(expansion, 1e7 * 1e-5) };
}

/** The shortest planar nozzle: all turning at a sharp sonic throat of half-height 1. */
function shortestPlanar(mach: number, gamma: number, rays: number) {
  const { table } = gasOf(gamma);
  const net = new CharacteristicNet();
  const first = net.openLine(1);
  setNodeInto(net.nodes, first, table, 0, 1, 0, 0);
  net.closeLine(1);
  const march: March = { net, table, symmetry: 'planar', shock: null, reachesAxis: true };
  marchFan(march, nuAtMach(table, mach) / 2, rays);
  const last = net.lineCount - 1;
  const line = net.nodes.slice(net.offset(last, 0), net.offset(last, 0) + net.lineLength(last) * NODE);
  return turnToAxial(table, 'planar', line, 2 * rays);
}

describe('the shortest planar nozzle', () => {
  test.each([
    [2, 1.4],
    [3, 1.4],
    [3.5, 1.2],
  ])('Mach %d, γ %d: the lip converges to the area ratio of one-dimensional flow', (mach, gamma) => {
    const misses = [20, 40, 80].map((rays) => {
      const wall = shortestPlanar(mach, gamma, rays);
      return Math.abs(wall[wall.length - 1]!.radius / areaRatioAtMach(mach, gamma) - 1);
    });
    expect(misses[2]!).toBeLessThan(2e-3);
    expect(misses[2]!).toBeLessThan(0.6 * misses[1]!);
    expect(misses[1]!).toBeLessThan(0.6 * misses[0]!);
  });

  test('starts at half the Prandtl–Meyer angle of the exit and turns steadily to the axis', () => {
    const wall = shortestPlanar(3, 1.4, 40);
    const { table } = gasOf(1.4);
    expect(wall[0]!.angle).toBeCloseTo(nuAtMach(table, 3) / 2, 10);
    for (let i = 1; i < wall.length; i++)
      expect(wall[i]!.angle).toBeLessThanOrEqual(wall[i - 1]!.angle + 1e-9);
    expect(wall[wall.length - 1]!.angle).toBe(0);
  });
});

describe('an ideal bell behind a rounded throat', () => {
  const gamma = 1.23;
  const { expansion, table } = gasOf(gamma);
  const symmetry: Symmetry = 'axisymmetric';

  function bell(turn: number, count: number) {
    const throat = { table, gamma, criticalSpeed: expansion.throat.velocity };
    const start = throatCharacteristic(throat, 1, 1.5, count);
    const arc = Array.from({ length: count }, (_, i) => {
      const angle = (turn * (i + 1)) / count;
      return { axial: 0.382 * Math.sin(angle), radius: 1 + 0.382 * (1 - Math.cos(angle)), angle };
    });
    const { net } = marchAlongWall(table, symmetry, start, arc);
    const last = net.lineCount - 1;
    const line = net.nodes.slice(net.offset(last, 0), net.offset(last, 0) + net.lineLength(last) * NODE);
    const wall = turnToAxial(table, symmetry, line, 2 * count);
    const arcWall = arc.map(
      (point, i): ShapedWallPoint => ({ ...point, nu: net.nodes[net.offset(i + 1, 0) + 3]! }),
    );
    const throatWall = { axial: start[0]!, radius: start[1]!, angle: start[2]!, nu: start[3]! };
    return {
      start: flowAcross(start, 0, count, table, symmetry),
      wall: [throatWall, ...arcWall, ...wall.slice(1)],
    };
  }

  test('mass in is mass out, and the push on the wall is the momentum gained', () => {
    const misses = [20, 40, 80].map((count) => {
      const { start, wall } = bell((25 * Math.PI) / 180, count);
      const lip = wall[wall.length - 1]!;
      const exit = tableStateAt(table, lip.nu);
      const area = Math.PI * lip.radius ** 2;
      let push = 0;
      for (let i = 1; i < wall.length; i++) {
        const pressure =
          0.5 * (tableStateAt(table, wall[i - 1]!.nu).pressure + tableStateAt(table, wall[i]!.nu).pressure);
        push += pressure * Math.PI * (wall[i]!.radius ** 2 - wall[i - 1]!.radius ** 2);
      }
      const mass = exit.density * exit.speed * area;
      return {
        mass: Math.abs(mass / start.massFlow - 1),
        force: Math.abs((start.axialForce + push) / (mass * exit.speed + exit.pressure * area) - 1),
        mach: exit.mach,
      };
    });
    expect(misses[2]!.mass).toBeLessThan(5e-4);
    expect(misses[2]!.force).toBeLessThan(5e-4);
    expect(misses[2]!.mass).toBeLessThan(0.6 * misses[0]!.mass);
  });
});
