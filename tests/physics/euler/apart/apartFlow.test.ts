/** Strips that take steps of their own lengths: what is conserved, what stays uniform, and that it is the same flow. */

import { expect, test } from 'vitest';
import { cutsOf } from '../../../../src/physics/euler/apart/strips.ts';
import {
  type ApartFlow,
  apartFlow,
  cellAt,
  type Flow,
  type FlowPoint,
  flowKernel,
  newFlow,
} from '../../../../src/physics/euler/index.ts';
import { burst, unevenSetup } from './apartCases.ts';

function run(flow: ApartFlow, until: number, courant = 0.8): ApartFlow {
  for (let n = 0; flow.time < until * (1 - 1e-12); n++) {
    flow.advance(courant, until - flow.time);
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
  const { mesh } = unevenSetup(burst).blocks[0]!;
  const cuts = cutsOf(mesh, []);
  expect(cuts.length).toBeGreaterThan(2);
  const [first] = cuts;
  expect(cutsOf(mesh, [first!])).not.toContain(first);
});

test('mass, energy and each gas are conserved to round-off', () => {
  const flow = apartFlow(unevenSetup(burst));
  const before = sums(flow);
  run(flow, 0.15);
  for (const [k, sum] of sums(flow).entries()) expect(Math.abs(sum / before[k]! - 1)).toBeLessThan(1e-13);
  // Nothing broke on the way, and the quickest strip took several steps while the slowest took one.
  expect(flow.rescued).toBe(0);
  expect(flow.steps / advances.get(flow)!).toBeGreaterThan(3);
});

test('it is the flow that all cells have with the same steps', () => {
  const apart = run(apartFlow(unevenSetup(burst)), 0.15, 0.5);
  const together = newFlow(unevenSetup(burst));
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
  const flow = apartFlow(unevenSetup(() => air, { is: 'far', air }));
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
  const flow = apartFlow(unevenSetup(carried, { is: 'free' }, [1.2, 1.4]));
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
  const one = run(apartFlow(unevenSetup(burst)), 0.05);
  const other = run(apartFlow({ ...unevenSetup(burst), kernel }), 0.05);
  expect(other.steps).toBe(one.steps);
  for (const [b, { mesh, pressure }] of one.fields.entries())
    for (let j = 0; j < mesh.nj; j++)
      for (let i = 0; i < mesh.ni; i++) {
        const at = cellAt(mesh, i, j);
        expect(Math.abs(other.fields[b]!.pressure[at]! / pressure[at]! - 1)).toBeLessThan(1e-10);
      }
});
