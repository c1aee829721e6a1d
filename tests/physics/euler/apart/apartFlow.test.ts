/** Strips that take steps of their own lengths: what is conserved, what stays uniform, and that it is the same flow. */

import { expect, test } from 'vitest';
import { cutsOf } from '../../../../src/physics/euler/apart/strips.ts';
import {
  type ApartFlow,
  apartFlow,
  cellAt,
  type Flow,
  type FlowPoint,
  type FlowSetup,
  flowKernel,
  meshBlock,
  newFlow,
  perfectFieldGas,
  type SideKind,
  type SidePart,
} from '../../../../src/physics/euler/index.ts';

const [NI, NJ] = [64, 12];
const wall: SideKind = { is: 'wall' };

/** Cells in the middle a twenty-seventh as long as at the ends; crooked across. */
function place(i: number, j: number, rows: number): readonly [number, number] {
  const s = (2 * i) / NI - 1;
  const x = 0.1 * s + 0.9 * s ** 3;
  return [x + 0.004 * Math.sin(j), (0.4 * j) / rows + 0.01 * Math.sin(3 * x)];
}

/** Two blocks one above the other, closed on all sides but where told. */
function setup(
  start: FlowSetup['start'],
  ends: SideKind = wall,
  gases: readonly [number, number] = [1.4, 1.4],
): FlowSetup {
  const [inner, outer] = gases.map(perfectFieldGas);
  const low = meshBlock('flat', NI, NJ, (i, j) => place(i, j, NJ));
  const high = meshBlock('flat', NI, NJ, (i, j) => {
    const [x, y] = place(i, NJ + j, NJ);
    return [x, y];
  });
  const part = (side: SidePart['side'], kind: SideKind): SidePart => ({
    side,
    from: 0,
    to: side.startsWith('i') ? NJ : NI,
    kind,
  });
  const joined = (block: number, side: SidePart['side']): SideKind => ({
    is: 'joined',
    block,
    side,
    from: 0,
    up: true,
  });
  const ofEnds = [part('iLow', ends), part('iHigh', ends)];
  return {
    blocks: [
      { mesh: low, sides: [...ofEnds, part('jLow', ends), part('jHigh', joined(1, 'jLow'))] },
      { mesh: high, sides: [...ofEnds, part('jLow', joined(0, 'jHigh')), part('jHigh', ends)] },
    ],
    gases: { inner: inner!, outer: gases[0] === gases[1] ? inner! : outer! },
    start,
  };
}

const burst = (x: number, y: number): FlowPoint => {
  const isIn = Math.hypot(x - 0.1, y - 0.4) < 0.25;
  return { density: isIn ? 3 : 1, u: 0, v: 0, pressure: isIn ? 6 : 1, share: isIn ? 1 : 0 };
};

function run(flow: ApartFlow, until: number): ApartFlow {
  for (let n = 0; flow.time < until * (1 - 1e-12); n++) {
    flow.advance(0.5, until - flow.time);
    advances.set(flow, n + 1);
  }
  return flow;
}

/** Steps of the slowest strip. */
const advances = new WeakMap<ApartFlow, number>();

function sums({ fields }: Flow): readonly number[] {
  const found = [0, 0, 0];
  for (const { mesh, density, energy, share } of fields)
    for (let j = 0; j < mesh.nj; j++)
      for (let i = 0; i < mesh.ni; i++) {
        const at = cellAt(mesh, i, j);
        const mass = mesh.volume[at]! * density[at]!;
        found[0] = found[0]! + mass;
        found[1] = found[1]! + mesh.volume[at]! * energy[at]!;
        found[2] = found[2]! + mass * share[at]!;
      }
  return found;
}

test('a mesh is cut where its cells become shorter, and stays whole at a sharp corner', () => {
  const { mesh } = setup(burst).blocks[0]!;
  const cuts = cutsOf(mesh, []);
  expect(cuts.length).toBeGreaterThan(2);
  const [first] = cuts;
  expect(cutsOf(mesh, [first!])).not.toContain(first);
});

test('mass, energy and each gas are conserved to round-off', () => {
  const flow = apartFlow(setup(burst));
  const before = sums(flow);
  run(flow, 0.15);
  for (const [k, sum] of sums(flow).entries()) expect(Math.abs(sum / before[k]! - 1)).toBeLessThan(1e-13);
  // Nothing broke on the way, and the quickest strip took several steps while the slowest took one.
  expect(flow.rescued).toBe(0);
  expect(flow.steps / advances.get(flow)!).toBeGreaterThan(3);
});

test('it is the flow that all cells have with the same steps', () => {
  const apart = run(apartFlow(setup(burst)), 0.15);
  const together = newFlow(setup(burst));
  while (together.time < 0.15) together.step(Math.min(together.stableStep(0.5), 0.15 - together.time));
  let [off, all] = [0, 0];
  for (const [b, { mesh, pressure }] of together.fields.entries())
    for (let j = 0; j < mesh.nj; j++)
      for (let i = 0; i < mesh.ni; i++) {
        const at = cellAt(mesh, i, j);
        off += mesh.volume[at]! * Math.abs(apart.fields[b]!.pressure[at]! - pressure[at]!);
        all += mesh.volume[at]! * pressure[at]!;
      }
  expect(off / all).toBeLessThan(1e-3);
});

test('a uniform stream stays one on the crooked mesh, whatever the steps', () => {
  const air: FlowPoint = { density: 1.2, u: 0.7, v: 0.2, pressure: 1, share: 0 };
  const flow = apartFlow(setup(() => air, { is: 'far', air }));
  run(flow, 0.3);
  for (const { mesh, pressure, u } of flow.fields)
    for (let j = 0; j < mesh.nj; j++)
      for (let i = 0; i < mesh.ni; i++) {
        expect(Math.abs(pressure[cellAt(mesh, i, j)]! - 1)).toBeLessThan(1e-12);
        expect(Math.abs(u[cellAt(mesh, i, j)]! - 0.7)).toBeLessThan(1e-12);
      }
});

test('a contact of two gases carried across the seams keeps pressure and speed uniform', () => {
  const carried = (x: number): FlowPoint => ({
    density: x < -0.3 ? 10 : 1,
    u: 1,
    v: 0,
    pressure: 1,
    share: x < -0.3 ? 1 : 0,
  });
  const flow = apartFlow(setup(carried, { is: 'free' }, [1.2, 1.4]));
  run(flow, 0.3);
  for (const { mesh, pressure, u } of flow.fields)
    for (let j = 0; j < mesh.nj; j++)
      for (let i = 0; i < mesh.ni; i++) {
        const at = cellAt(mesh, i, j);
        expect(Math.abs(pressure[at]! - 1)).toBeLessThan(1e-3);
        expect(Math.abs(u[at]! - 1)).toBeLessThan(1e-3);
      }
});

test('the kernel on 64 bits takes the same steps', () => {
  const kernel = flowKernel(64);
  expect(kernel).not.toBeNull();
  const one = run(apartFlow(setup(burst)), 0.05);
  const other = run(apartFlow({ ...setup(burst), kernel }), 0.05);
  expect(other.steps).toBe(one.steps);
  for (const [b, { mesh, pressure }] of one.fields.entries())
    for (let j = 0; j < mesh.nj; j++)
      for (let i = 0; i < mesh.ni; i++) {
        const at = cellAt(mesh, i, j);
        expect(Math.abs(other.fields[b]!.pressure[at]! / pressure[at]! - 1)).toBeLessThan(1e-10);
      }
});
