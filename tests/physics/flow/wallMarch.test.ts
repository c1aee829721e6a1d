import { describe, expect, test } from 'vitest';
import { flowAcross } from '../../../src/physics/flow/axialFlow.ts';
import { tableStateAt, tabulateSupersonic } from '../../../src/physics/flow/gasTable.ts';
import { NODE } from '../../../src/physics/flow/points.ts';
import { throatCharacteristic } from '../../../src/physics/flow/startLine.ts';
import { marchAlongWall, type WallPoint } from '../../../src/physics/flow/wallMarch.ts';
import { expandPerfect } from '../../../src/physics/gas/index.ts';

const gamma = 1.23;
const expansion = expandPerfect({ gamma, molarMass: 0.022, temperature: 3500, pressure: 1e7 });
const table = tabulateSupersonic(expansion, 1e7 * 1e-6);
const degree = Math.PI / 180;

function arc(turn: number, count: number): WallPoint[] {
  return Array.from({ length: count }, (_, i) => {
    const angle = (turn * (i + 1)) / count;
    return { axial: 0.382 * Math.sin(angle), radius: 1 + 0.382 * (1 - Math.cos(angle)), angle };
  });
}

function cone(halfAngle: number, areaRatio: number, count: number): WallPoint[] {
  const throat = arc(halfAngle, count);
  const from = throat[count - 1]!;
  const length = (Math.sqrt(areaRatio) - from.radius) / Math.tan(halfAngle);
  const rest = Array.from({ length: 4 * count }, (_, i) => {
    const x = length * ((i + 1) / (4 * count)) ** 1.4;
    return { axial: from.axial + x, radius: from.radius + x * Math.tan(halfAngle), angle: halfAngle };
  });
  return [...throat, ...rest];
}

function march(wall: readonly WallPoint[], count: number) {
  const start = throatCharacteristic(
    { table, gamma, criticalSpeed: expansion.throat.velocity },
    1,
    1.5,
    count,
  );
  return { start, ...marchAlongWall(table, 'axisymmetric', start, wall) };
}

/** Axial force on the wall from the start line on, by its pressure. */
function wallForce(net: ReturnType<typeof march>['net'], wall: readonly WallPoint[]): number {
  let force = 0;
  let radius = 1;
  let pressure = tableStateAt(table, net.nodes[net.offset(0, 0) + 3]!).pressure;
  wall.forEach((point, i) => {
    const next = tableStateAt(table, net.nodes[net.offset(i + 1, 0) + 3]!).pressure;
    force += Math.PI * (point.radius ** 2 - radius ** 2) * 0.5 * (pressure + next);
    radius = point.radius;
    pressure = next;
  });
  return force;
}

describe('marching along a given wall', () => {
  test('conserves mass to 0.05 % across the expansion behind the throat, better with a finer net', () => {
    const misses = [20, 40].map((count) => {
      const { net, start } = march(arc(25 * degree, count), count);
      const carried = flowAcross(start, 0, count, table, 'axisymmetric').massFlow;
      const last = net.lineCount - 1;
      const { massFlow } = flowAcross(
        net.nodes,
        net.offset(last, 0),
        net.lineLength(last),
        table,
        'axisymmetric',
      );
      return Math.abs(massFlow / carried - 1);
    });
    expect(misses[1]!).toBeLessThan(5e-4);
    expect(misses[1]!).toBeLessThan(0.5 * misses[0]!);
  });

  test('two roads, one thrust: wall pressure and the flow across the last complete line agree', () => {
    const count = 40;
    const wall = arc(25 * degree, count);
    const { net, start } = march(wall, count);
    const before = flowAcross(start, 0, count, table, 'axisymmetric').axialForce;
    const last = net.lineCount - 1;
    const { axialForce } = flowAcross(
      net.nodes,
      net.offset(last, 0),
      net.lineLength(last),
      table,
      'axisymmetric',
    );
    expect(Math.abs((before + wallForce(net, wall)) / axialForce - 1)).toBeLessThan(1e-3);
  });

  test.each([12, 15, 18])(
    'a %d° cone loses by divergence what (1 + cos α)/2 says, within 0.45 %%',
    (angle) => {
      const count = 40;
      const areaRatio = 20;
      const wall = cone(angle * degree, areaRatio, count);
      const { net, start } = march(wall, count);
      const { massFlow, axialForce } = flowAcross(start, 0, count, table, 'axisymmetric');
      const share = massFlow / (Math.PI * expansion.throat.massFlux);
      const exit = expansion.atAreaRatio(areaRatio / share, 'supersonic');
      const momentum = massFlow * exit.velocity;
      const factor = (axialForce + wallForce(net, wall) - exit.pressure * Math.PI * areaRatio) / momentum;
      // The factor is exact for a source flow; behind a rounded throat the flow is near one (common practice, no source).
      expect(Math.abs(factor - (1 + Math.cos(angle * degree)) / 2)).toBeLessThan(0.0045);
    },
  );

  test('tells where an internal shock begins, and how strong it gets', () => {
    const { shock } = march(cone(15 * degree, 20, 40), 40);
    // A cone's wall stops turning at the end of the throat arc: a compression runs inward from there, as measured by
    // L. H. Back, P. F. Massier, H. L. Gier, AIAA J. 3(9), 1965 (existence; from memory).
    expect(shock).not.toBeNull();
    expect(shock!.axial).toBeGreaterThan(0.38 * Math.sin(15 * degree));
    // Near the axis, where the rings close, any shock of a round flow grows; it stays a matter of some ten degrees.
    expect(shock!.strongestTurn).toBeLessThan(20 * degree);
  });

  test('wall points in order have one line each, all nodes in the table', () => {
    const wall = cone(15 * degree, 10, 30);
    const { net } = march(wall, 30);
    expect(net.lineCount).toBe(wall.length + 1);
    for (let at = 0; at < net.nodeCount * NODE; at += NODE) {
      expect(net.nodes[at + 3]!).toBeGreaterThanOrEqual(0);
      expect(net.nodes[at + 3]!).toBeLessThanOrEqual(table.nuMax);
    }
  });
});
