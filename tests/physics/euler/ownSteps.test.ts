import { describe, expect, test } from 'vitest';
import {
  cellAt,
  type Flow,
  flowKernel,
  meshBlock,
  newFlow,
  perfectFieldGas,
} from '../../../src/physics/euler/index.ts';

/** A weak burst in a closed box whose cells differ in length by a factor of 30. */
function burst(by: 64 | null, spread?: number): Flow {
  const n = 14;
  const gas = perfectFieldGas(1.4);
  const sides = (['iLow', 'iHigh', 'jLow', 'jHigh'] as const).map((side) => ({
    side,
    from: 0,
    to: n,
    kind: { is: 'wall' as const },
  }));
  return newFlow({
    blocks: [{ mesh: meshBlock('flat', n, n, (i, j) => [1.3 ** i, 1.3 ** j]), sides }],
    gases: { inner: gas, outer: gas },
    start: (x) => ({ density: 1, u: 0, v: 0, pressure: x < 3 ? 2 : 1, share: 0 }),
    kernel: by === null ? null : flowKernel(by),
    ...(spread !== undefined && { spread }),
  });
}

function pressures({ fields }: Flow): readonly number[] {
  const { mesh, pressure } = fields[0]!;
  return Array.from({ length: mesh.ni }, (_, i) => pressure[cellAt(mesh, i, 0)]!);
}

describe.each([null, 64] as const)('towards rest, by the reference (null) or a kernel: %s', (by) => {
  test('own steps that may not differ are the steps of a flow through time', () => {
    const [own, timed] = [burst(by, 1), burst(by)];
    for (let k = 0; k < 10; k++) {
      own.relax(0.5);
      timed.step(timed.stableStep(0.5));
    }
    const through = pressures(timed);
    for (const [i, p] of pressures(own).entries()) expect(p).toBeCloseTo(through[i]!, 10);
  });

  test('left free, the long cells are far ahead of that', () => {
    const [free, timed] = [burst(by), burst(by)];
    for (let k = 0; k < 10; k++) {
      free.relax(0.5);
      timed.step(timed.stableStep(0.5));
    }
    const through = pressures(timed);
    expect(Math.max(...pressures(free).map((p, i) => Math.abs(p - through[i]!)))).toBeGreaterThan(0.05);
  });
});
