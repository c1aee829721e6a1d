import { expect, test } from 'vitest';
import { marchFan } from '../../../src/physics/flow/centredFan.ts';
import { nuAtMach, tabulateSupersonic } from '../../../src/physics/flow/gasTable.ts';
import type { March } from '../../../src/physics/flow/lineMarch.ts';
import { CharacteristicNet } from '../../../src/physics/flow/net.ts';
import { NODE, type Symmetry, setNodeInto } from '../../../src/physics/flow/points.ts';
import { marchPressureWall } from '../../../src/physics/flow/pressureWall.ts';
import { expandPerfect } from '../../../src/physics/gas/index.ts';
import { problemCode } from '../problemCode.ts';
import { areaRatioAtMach } from './closedForms.ts';

const gamma = 1.25;
const expansion = expandPerfect({ gamma, molarMass: 0.022, temperature: 3500, pressure: 1e7 });
const table = tabulateSupersonic(expansion, 1e7 * 1e-6);
const degree = Math.PI / 180;

function marchFrom(nodes: readonly (readonly [number, number, number, number])[], symmetry: Symmetry): March {
  const net = new CharacteristicNet(4096);
  const first = net.openLine(nodes.length);
  nodes.forEach(([x, r, theta, nu], i) => {
    setNodeInto(net.nodes, first + i * NODE, table, x, r, theta, nu);
  });
  net.closeLine(nodes.length);
  return { net, table, symmetry, shock: null, reachesAxis: true };
}

/** Prandtl–Meyer: uniform flow past a corner into the pressure of that turn runs straight on, turned by it. */
test('behind a corner in uniform plane flow the wall of constant pressure is straight', () => {
  const nu = nuAtMach(table, 2);
  const turn = 8 * degree;
  const slope = Math.tan(Math.asin(1 / 2));
  const line = Array.from({ length: 21 }, (_, i) => [i / 20 / slope, 1 - i / 20, 0, nu] as const);
  const march = marchFrom(line, 'planar');
  marchFan(march, turn, 8);
  const corner = march.net.lineCount - 1;
  const reached = marchPressureWall(march, {
    nuAt: () => nu + turn,
    lastRadius: 1.3,
    step: 0.1,
    mostSteps: 100,
  });
  expect(reached).toBe(true);
  for (let line = corner; line < march.net.lineCount; line++) {
    const at = march.net.offset(line, 0);
    const [x, r] = [march.net.nodes[at]!, march.net.nodes[at + 1]!];
    expect(Math.abs(r - (1 + x * Math.tan(turn)))).toBeLessThan(1e-10);
  }
  const end = march.net.offset(march.net.lineCount - 1, 0);
  expect(march.net.nodes[end + 1]).toBeCloseTo(1.3, 8);
});

/** Source flow in a cone, exact: the area grows as the square of the distance from the source. */
test('with the pressure of source flow the wall is the cone, second order in the step', () => {
  const alpha = 12 * degree;
  const startMach = 2;
  const machAt = (distance: number): number => {
    let [low, high] = [1.0001, 20];
    for (let i = 0; i < 100; i++) {
      const middle = 0.5 * (low + high);
      const ratio = areaRatioAtMach(middle, gamma) / areaRatioAtMach(startMach, gamma);
      if (ratio < distance * distance) low = middle;
      else high = middle;
    }
    return 0.5 * (low + high);
  };
  // C− in source flow: dφ/d ln R = −tan μ, from the wall to the axis, by small Runge–Kutta steps in φ.
  const line = (count: number) => {
    let lnDistance = 0;
    const slope = (lnR: number): number => -Math.sqrt(machAt(Math.exp(lnR)) ** 2 - 1);
    return Array.from({ length: count }, (_, i) => {
      const phi = alpha * (1 - i / (count - 1));
      if (i > 0) {
        const h = -alpha / (count - 1);
        const k1 = slope(lnDistance);
        const k2 = slope(lnDistance + 0.5 * h * k1);
        const k3 = slope(lnDistance + 0.5 * h * k2);
        lnDistance += (h * (k1 + 2 * k2 + 2 * k3 + slope(lnDistance + h * k3))) / 6;
      }
      const distance = Math.exp(lnDistance);
      const nu = nuAtMach(table, machAt(distance));
      return [
        distance * Math.cos(phi),
        i === count - 1 ? 0 : distance * Math.sin(phi),
        i === count - 1 ? 0 : phi,
        nu,
      ] as const;
    });
  };
  const missOf = (count: number): number => {
    const march = marchFrom(line(count), 'axisymmetric');
    const reached = marchPressureWall(march, {
      nuAt: (radius) => nuAtMach(table, machAt(radius / Math.sin(alpha))),
      lastRadius: 2 * Math.sin(alpha),
      step: 1 / count,
      mostSteps: 1000,
    });
    expect(reached).toBe(true);
    const at = march.net.offset(march.net.lineCount - 1, 0);
    return Math.abs(march.net.nodes[at + 2]! - alpha);
  };
  const [coarse, fine] = [missOf(41), missOf(81)];
  expect(fine).toBeLessThan(1e-4);
  expect(fine).toBeLessThan(coarse! / 3);
});

test('says where the wall lies beyond what the line before can reach', () => {
  const nu = nuAtMach(table, 2);
  const short = marchFrom(
    [
      [0, 1, 0, nu],
      [0.05, 0.97, 0, nu],
    ],
    'planar',
  );
  short.reachesAxis = false;
  expect(
    problemCode(() =>
      marchPressureWall(short, { nuAt: () => nu, lastRadius: 1.5, step: 0.5, mostSteps: 10 }),
    ),
  ).toBe('pressure-wall-out-of-reach');
});
