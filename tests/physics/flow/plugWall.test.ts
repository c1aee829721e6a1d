import { describe, expect, test } from 'vitest';
import { flowAcross } from '../../../src/physics/flow/axialFlow.ts';
import { nuAtMach, tableStateAt, tabulateSupersonic } from '../../../src/physics/flow/gasTable.ts';
import { plugWall, straightRayRadius } from '../../../src/physics/flow/plugWall.ts';
import { NODE } from '../../../src/physics/flow/points.ts';
import { expandPerfect } from '../../../src/physics/gas/index.ts';
import { areaRatioAtMach } from './closedForms.ts';

const gamma = 1.2;
const expansion = expandPerfect({ gamma, molarMass: 0.022, temperature: 3500, pressure: 1e7 });
const table = tabulateSupersonic(expansion, 1e7 * 1e-5);

/** Push on the plug's wall [N]: its pressure on the area it shrinks by. */
function wallPush(wall: ReturnType<typeof plugWall>['wall'], planar: boolean): number {
  let push = 0;
  for (let i = 1; i < wall.length; i++) {
    const [a, b] = [wall[i - 1]!, wall[i]!];
    const pressure = 0.5 * (tableStateAt(table, a.nu).pressure + tableStateAt(table, b.nu).pressure);
    push += pressure * (planar ? a.radius - b.radius : Math.PI * (a.radius ** 2 - b.radius ** 2));
  }
  return push;
}

describe('a linear plug', () => {
  test('has straight rays whose length is the flow they carry, exactly', () => {
    const mach = 3;
    const nuExit = nuAtMach(table, mach);
    const { wall, massFlow } = plugWall(table, 'planar', 1, 0, nuExit, 40);
    const throat = massFlow / expansion.throat.massFlux;
    expect(throat * areaRatioAtMach(mach, gamma)).toBeCloseTo(1, 6);
    for (const point of wall) {
      const state = tableStateAt(table, point.nu);
      // Planar simple wave: ray length · sin μ is the height of the stream, h_throat · A/A* (closed form).
      const length = throat * areaRatioAtMach(state.mach, gamma) * state.mach;
      expect(Math.hypot(point.axial, 1 - point.radius) / length).toBeCloseTo(1, 5);
    }
  });
});

describe('a round plug', () => {
  const nuInner = nuAtMach(table, 1.5);

  test('pushes with the thrust of the ideal nozzle, within 0.2 %, better with more rays', () => {
    const misses = [20, 40, 80].map((rays) => {
      const { wall, firstRay, massFlow } = plugWall(
        table,
        'axisymmetric',
        1,
        nuInner,
        nuAtMach(table, 3.5),
        rays,
      );
      const exit = expansion.atAreaRatio(areaRatioAtMach(3.5, gamma), 'supersonic');
      const ideal = massFlow * exit.velocity + exit.pressure * Math.PI;
      const throat = flowAcross(firstRay, 0, firstRay.length / NODE, table, 'axisymmetric');
      return Math.abs((throat.axialForce + wallPush(wall, false)) / ideal - 1);
    });
    expect(misses[2]!).toBeLessThan(2e-3);
    expect(misses[2]!).toBeLessThan(0.5 * misses[0]!);
  });

  test('has a wall along which the flow runs', () => {
    const { wall } = plugWall(table, 'axisymmetric', 1, nuInner, nuAtMach(table, 3.5), 80);
    for (let i = 1; i + 2 < wall.length; i++) {
      const [a, b] = [wall[i - 1]!, wall[i]!];
      const slope = Math.atan2(b.radius - a.radius, b.axial - a.axial);
      expect(Math.abs(slope - 0.5 * (a.angle + b.angle))).toBeLessThan(0.005);
    }
  });

  test('lies near the wall by straight rays (Angelino 1964)', () => {
    const mach = 3.5;
    const nuExit = nuAtMach(table, mach);
    const { wall } = plugWall(table, 'axisymmetric', 1, nuInner, nuExit, 60);
    const throatArea = Math.PI / areaRatioAtMach(mach, gamma);
    for (const share of [0.25, 0.5, 0.75]) {
      const nu = nuInner + share * (nuExit - nuInner);
      const state = tableStateAt(table, nu);
      const angle = state.mu - (nu - nuExit);
      const radius = straightRayRadius(1, throatArea, areaRatioAtMach(state.mach, gamma), state.mach, angle);
      const axial = (1 - radius) / Math.tan(angle);
      const i = wall.findIndex((point) => point.axial >= axial);
      const [a, b] = [wall[i - 1]!, wall[i]!];
      const exact = a.radius + ((b.radius - a.radius) * (axial - a.axial)) / (b.axial - a.axial);
      expect(Math.abs(exact - radius)).toBeLessThan(0.03);
    }
  });

  test('is refused when its fan would turn the flow by more than a right angle', () => {
    expect(() => plugWall(table, 'axisymmetric', 1, 0.1, 0.1 + 1.6, 20)).toThrow(/turn the flow by 91.7°/);
  });
});
