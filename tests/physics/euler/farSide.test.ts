import { expect, test } from 'vitest';
import {
  cellAt,
  type Field,
  flowKernel,
  meshBlock,
  newFlow,
  perfectFieldGas,
  type SidePart,
} from '../../../src/physics/euler/index.ts';

const gas = perfectFieldGas(1.4);
/** Of sound speed 1. */
const still = { density: 1.4, u: 0, v: 0, pressure: 1, share: 0 };
/** Of a pulse. */
const HEIGHT = 0.1;

test('the far side lets a wave go: what comes back of a pulse is below 3 % of it', () => {
  const n = 60;
  const mesh = meshBlock('flat', n, 4, (i, j) => [i / n, j / n]);
  const far = { is: 'far', air: still } as const;
  const wall = { is: 'wall' } as const;
  const flow = newFlow({
    blocks: [
      {
        mesh,
        sides: [
          { side: 'iLow', from: 0, to: 4, kind: far },
          { side: 'iHigh', from: 0, to: 4, kind: far },
          { side: 'jLow', from: 0, to: n, kind: wall },
          { side: 'jHigh', from: 0, to: n, kind: wall },
        ],
      },
    ],
    gases: { inner: gas, outer: gas },
    start: (x) => ({ ...still, pressure: 1 + HEIGHT * Math.exp(-(((x - 0.5) / 0.08) ** 2)) }),
  });
  // After a time of 1.2 both halves are well outside.
  while (flow.time < 1.2) flow.step(flow.stableStep(0.6));
  for (let i = 0; i < n; i++)
    expect(Math.abs(flow.fields[0]!.pressure[cellAt(mesh, i, 1)]! - 1)).toBeLessThan(0.03 * HEIGHT);
});

test.each([
  ['flat', 0],
  ['flat', 0.5],
  ['round', 0.5],
] as const)(
  'a round pulse in a %s wind at Mach %d, which meets the far sides askew: within 2 % of it as where they are farther away',
  (symmetry, mach) => {
    const n = 30;
    const air = { ...still, u: mach };
    /** Of cells 1/n long, so many columns ahead of x = 0 and behind x = 1, so many rows. */
    const pulseIn = (ahead: number, behind: number, rows: number) => {
      const columns = ahead + n + behind;
      const part = (side: SidePart['side'], kind: SidePart['kind']): SidePart => ({
        side,
        from: 0,
        to: side.startsWith('i') ? rows : columns,
        kind,
      });
      const far = { is: 'far', air } as const;
      return newFlow({
        blocks: [
          {
            mesh: meshBlock(symmetry, columns, rows, (i, j) => [(i - ahead) / n, j / n]),
            sides: [part('iLow', far), part('iHigh', far), part('jLow', { is: 'wall' }), part('jHigh', far)],
          },
        ],
        gases: { inner: gas, outer: gas },
        kernel: flowKernel(64),
        start: (x, y) => ({
          ...air,
          pressure: 1 + HEIGHT * Math.exp(-(((x - 0.5) ** 2 + y * y) / 0.08 ** 2)),
        }),
      });
    };
    // Nothing comes back from the sides of the larger one, 1.5 to 2 away, to the smaller one until it is 1.2 later.
    const [near, wide] = [pulseIn(0, 0, n / 2), pulseIn(n, 1.5 * n, 1.4 * n)];
    const at = ({ mesh, pressure }: Field, i: number, j: number): number => pressure[cellAt(mesh, i, j)]!;
    for (const time of [0.5, 0.8, 1.2]) {
      for (const flow of [near, wide])
        while (flow.time < time - 1e-12) flow.step(Math.min(flow.stableStep(0.6), time - flow.time));
      let most = 0;
      for (let j = 0; j < n / 2; j++)
        for (let i = 0; i < n; i++)
          most = Math.max(most, Math.abs(at(near.fields[0]!, i, j) - at(wide.fields[0]!, n + i, j)));
      // Waves that meet a side askew are not all let go by characteristics of one dimension.
      expect(most).toBeLessThan(0.02 * HEIGHT);
    }
  },
);
