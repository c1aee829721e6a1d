import { expect, test } from 'vitest';
import {
  cellAt,
  meshBlock,
  newFlow,
  perfectFieldGas,
  type SidePart,
} from '../../../src/physics/euler/index.ts';

const CELLS = 40;
const UNTIL = 0.2;
const gas = perfectFieldGas(1.4);

/** Pressures of a sound wave in a wind, once round an endless row, in so many steps. */
function waveIn(steps: number): readonly number[] {
  const mesh = meshBlock('flat', CELLS, 2, (i, j) => [i / CELLS, j / CELLS]);
  const part = (side: SidePart['side'], kind: SidePart['kind']): SidePart => ({
    side,
    from: 0,
    to: side.startsWith('i') ? 2 : CELLS,
    kind,
  });
  const to = (side: SidePart['side']) => ({ is: 'joined', block: 0, side, from: 0, up: true }) as const;
  const sides = [
    part('iLow', to('iHigh')),
    part('iHigh', to('iLow')),
    part('jLow', { is: 'wall' }),
    part('jHigh', { is: 'wall' }),
  ];
  const flow = newFlow({
    blocks: [{ mesh, sides }],
    gases: { inner: gas, outer: gas },
    start: (x) => ({ density: 1.4, u: 0.3, v: 0, pressure: 1 + 0.1 * Math.sin(2 * Math.PI * x), share: 0 }),
  });
  for (let n = 0; n < steps; n++) flow.step(UNTIL / steps);
  return Array.from({ length: CELLS }, (_, i) => flow.fields[0]!.pressure[cellAt(mesh, i, 0)]!);
}

test('second order in time: on one mesh half the step leaves a quarter of the error', () => {
  // What is left of the steps alone: against so many of them that theirs is a thousandth.
  const exact = waveIn(1280);
  const errorOf = (steps: number): number =>
    waveIn(steps).reduce((sum, pressure, i) => sum + Math.abs(pressure - exact[i]!), 0) / CELLS;
  // 0.4 and 0.2 of what a wave passes of a cell.
  const [long, short] = [errorOf(20), errorOf(40)];
  expect(Math.log2(long / short)).toBeGreaterThan(1.95);
  expect(Math.log2(long / short)).toBeLessThan(2.05);
});
