import { describe, expect, test } from 'vitest';
import {
  cellAt,
  meshBlock,
  newFlow,
  perfectFieldGas,
  type SidePart,
} from '../../../src/physics/euler/index.ts';
import { exactRiemann, type RiemannState } from './exactRiemann.ts';

const GAMMA = 1.4;
const state = (density: number, velocity: number, pressure: number): RiemannState => ({
  density,
  velocity,
  pressure,
});

/**
 * The five problems of Toro, Riemann Solvers and Numerical Methods for Fluid Dynamics, table 4.1 (the first with the flow of
 * section 6.4): states, place of the jump, time; and how far the mean of |density − exact| may be, against the greatest density
 * in the solution, with 200 cells: what a second-order scheme leaves at shocks and contacts of a few cells.
 */
const PROBLEMS = [
  ['sonic rarefaction', state(1, 0.75, 1), state(0.125, 0, 0.1), 0.3, 0.2, 0.006],
  ['two rarefactions', state(1, -2, 0.4), state(1, 2, 0.4), 0.5, 0.15, 0.01],
  ['strong shock', state(1, 0, 1000), state(1, 0, 0.01), 0.5, 0.012, 0.025],
  ['two shocks meet', state(5.99924, 19.5975, 460.894), state(5.99242, -6.19633, 46.095), 0.4, 0.035, 0.01],
  ['contact at rest', state(1, -19.59745, 1000), state(1, -19.59745, 0.01), 0.8, 0.012, 0.02],
] as const;

function meanError(
  cells: number,
  left: RiemannState,
  right: RiemannState,
  jump: number,
  time: number,
): number {
  const mesh = meshBlock('flat', cells, 1, (i, j) => [i / cells, j / cells]);
  const sides: readonly SidePart[] = [
    { side: 'iLow', from: 0, to: 1, kind: { is: 'free' } },
    { side: 'iHigh', from: 0, to: 1, kind: { is: 'free' } },
    { side: 'jLow', from: 0, to: cells, kind: { is: 'wall' } },
    { side: 'jHigh', from: 0, to: cells, kind: { is: 'wall' } },
  ];
  const gas = perfectFieldGas(GAMMA);
  const flow = newFlow({
    blocks: [{ mesh, sides }],
    gases: { inner: gas, outer: gas },
    start: (x) => {
      const { density, velocity, pressure } = x < jump ? left : right;
      return { density, u: velocity, v: 0, pressure, share: 0 };
    },
  });
  while (flow.time < time) flow.step(Math.min(flow.stableStep(0.5), time - flow.time));
  const exact = exactRiemann(left, right, GAMMA);
  const field = flow.fields[0]!;
  let sum = 0;
  let most = 0;
  for (let i = 0; i < cells; i++) {
    const { density } = exact.at(((i + 0.5) / cells - jump) / time);
    sum += Math.abs(field.density[cellAt(mesh, i, 0)]! - density) / cells;
    most = Math.max(most, density);
  }
  return sum / most;
}

describe('two states side by side', () => {
  test('the exact solution is that of the tables (Toro, table 4.2)', () => {
    const sod = exactRiemann(state(1, 0, 1), state(0.125, 0, 0.1), GAMMA);
    expect(sod.pressure).toBeCloseTo(0.30313, 5);
    expect(sod.velocity).toBeCloseTo(0.92745, 5);
    expect(exactRiemann(PROBLEMS[1][1], PROBLEMS[1][2], GAMMA).pressure).toBeCloseTo(0.00189, 5);
    expect(exactRiemann(PROBLEMS[2][1], PROBLEMS[2][2], GAMMA).pressure).toBeCloseTo(460.894, 3);
    expect(exactRiemann(PROBLEMS[3][1], PROBLEMS[3][2], GAMMA).pressure).toBeCloseTo(1691.64, 1);
  });

  test.each(PROBLEMS)('%s', (_name, left, right, jump, time, most) => {
    const coarse = meanError(50, left, right, jump, time);
    const fine = meanError(200, left, right, jump, time);
    expect(fine).toBeLessThan(most);
    expect(fine).toBeLessThan(0.6 * coarse);
  });
});
