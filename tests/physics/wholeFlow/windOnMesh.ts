/** Air that flows evenly along the axis over the mesh of an engine, its walls away from the axis opened. */

import { expect } from 'vitest';
import {
  cellAt,
  type FlowPoint,
  type FlowSetup,
  newFlow,
  perfectFieldGas,
} from '../../../src/physics/euler/index.ts';

const gas = perfectFieldGas(1.3);
const wind: FlowPoint = { density: 1.1, u: 300, v: 0, pressure: 9e4, share: 0 };
/** For what lies beyond the sides of the mesh. */
export const windBeyond = { is: 'given', at: () => wind } as const;

export function expectWindToStay(blocks: FlowSetup['blocks']): void {
  const open = blocks.map(({ mesh, sides }) => ({
    mesh,
    sides: sides.map((part) =>
      part.kind.is === 'wall' && !(part.side === 'jLow' && mesh.y[0] === 0)
        ? { ...part, kind: windBeyond }
        : part,
    ),
  }));
  const flow = newFlow({ blocks: open, gases: { inner: gas, outer: gas }, start: () => wind });
  for (let n = 0; n < 10; n++) flow.relax(0.6);
  for (const { mesh, u, v, pressure } of flow.fields)
    for (let j = 0; j < mesh.nj; j++)
      for (let i = 0; i < mesh.ni; i++) {
        const at = cellAt(mesh, i, j);
        expect(Math.abs(pressure[at]! / wind.pressure - 1)).toBeLessThan(1e-9);
        expect(Math.hypot(u[at]! / wind.u - 1, v[at]! / wind.u)).toBeLessThan(1e-9);
      }
}
