import { expect, test } from 'vitest';
import {
  type Flow,
  gpuFlow,
  meshBlock,
  newFlow,
  perfectFieldGas,
  type SideKind,
} from '../../../../src/physics/euler/index.ts';

const air = perfectFieldGas(1.4);
const [ni, nj] = [16, 8];

/** A box of still gas, open or not where its first index begins. */
function boxWith(iLow: SideKind): Flow {
  return newFlow({
    blocks: [
      {
        mesh: meshBlock('flat', ni, nj, (i, j) => [i, j]),
        sides: (['iLow', 'iHigh', 'jLow', 'jHigh'] as const).map((side) => ({
          side,
          from: 0,
          to: side.startsWith('i') ? nj : ni,
          kind: side === 'iLow' ? iLow : { is: 'wall' },
        })),
      },
    ],
    gases: { inner: air, outer: air },
    start: () => ({ density: 1, u: 0, v: 0, pressure: 1, share: 0 }),
  });
}

/** Groups of 64 threads, and no more than four of them. */
const device = { limits: { maxComputeWorkgroupsPerDimension: 4 } } as GPUDevice;

test('a field of more cells than a device goes through at a time is refused before anything is sent', async () => {
  // 280 faces.
  await expect(gpuFlow(device, boxWith({ is: 'wall' }))).rejects.toMatchObject({
    problem: { code: 'flow-gpu-too-large', facts: { entries: 280, most: 256 } },
  });
});

test('a chamber without a pressure at rest, fed in time, is refused', async () => {
  const fed: SideKind = {
    is: 'reservoir',
    highest: Number.POSITIVE_INFINITY,
    share: 1,
    at: (pressure) => ({ density: pressure, speed: 0.1 }),
  };
  await expect(gpuFlow(device, boxWith(fed))).rejects.toMatchObject({ problem: { code: 'flow-gpu-side' } });
});
