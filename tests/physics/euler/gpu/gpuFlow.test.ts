import { expect, test } from 'vitest';
import { gpuFlow, meshBlock, newFlow, perfectFieldGas } from '../../../../src/physics/euler/index.ts';

test('a field of more cells than a device goes through at a time is refused before anything is sent', async () => {
  const air = perfectFieldGas(1.4);
  const [ni, nj] = [16, 8];
  const flow = newFlow({
    blocks: [
      {
        mesh: meshBlock('flat', ni, nj, (i, j) => [i, j]),
        sides: (['iLow', 'iHigh', 'jLow', 'jHigh'] as const).map((side) => ({
          side,
          from: 0,
          to: side.startsWith('i') ? nj : ni,
          kind: { is: 'wall' },
        })),
      },
    ],
    gases: { inner: air, outer: air },
    start: () => ({ density: 1, u: 0, v: 0, pressure: 1, share: 0 }),
  });
  // 280 faces; a device with groups of 64 threads, and no more than four of them.
  const device = { limits: { maxComputeWorkgroupsPerDimension: 4 } } as GPUDevice;
  await expect(gpuFlow(device, flow)).rejects.toMatchObject({
    problem: { code: 'flow-gpu-too-large', facts: { entries: 280, most: 256 } },
  });
});
