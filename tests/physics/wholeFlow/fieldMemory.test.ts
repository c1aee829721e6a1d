import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { expect, test } from 'vitest';
import {
  apartFlow,
  type Field,
  type FlowSetup,
  flowKernel,
  meshBlock,
  newFlow,
  perfectFieldGas,
} from '../../../src/physics/euler/index.ts';
import { bytesFor } from '../../../src/physics/euler/kernel/kernelMemory.ts';
import { settle } from '../../../src/physics/wholeFlow/index.ts';

/** Half as many each way as in a picture of 512 × 256 cells, which may hold 64 MB (own bound). */
const [NI, NJ] = [256, 128];
const MOST = 64e6 / 4;

setFlagsFromString('--expose-gc');
const collect = runInNewContext('gc') as () => void;

/** Bytes in arrays now, what nobody holds any more left out; memory of WebAssembly is not among them. */
function held(): number {
  collect();
  collect();
  return process.memoryUsage().arrayBuffers;
}

const air = perfectFieldGas(1.4);
function setup(): FlowSetup {
  return {
    blocks: [
      {
        mesh: meshBlock('round', NI, NJ, (i, j) => [(i + 0.002 * i * i) / NI, j / NI]),
        sides: (['iLow', 'iHigh', 'jLow', 'jHigh'] as const).map((side) => ({
          side,
          from: 0,
          to: side.startsWith('i') ? NJ : NI,
          kind: { is: 'wall' },
        })),
      },
    ],
    gases: { inner: air, outer: air },
    start: (x) => ({ density: 1, u: 0, v: 0, pressure: x < 0.5 ? 2 : 1, share: 1 }),
    kernel: flowKernel(32),
  };
}

const kernelBytes = ({ blocks, gases }: FlowSetup): number =>
  bytesFor(
    blocks.map(({ mesh }) => mesh),
    32,
    [gases.inner, gases.outer],
    1,
  );

test('a field on its way to rest holds less than 64 MB at 512 × 256 cells: mesh, kernel and the means of it', () => {
  const before = held();
  const own = setup();
  let most = 0;
  settle(newFlow(own), {
    least: 200,
    most: 200,
    watch: ({ fields }) => {
      most = Math.max(most, held() - before);
      return [fields[0]!.pressure[1000]!];
    },
    still: [1],
  });
  // Once still, the last looks are put together in one mean more.
  const mean = 5 * 8 * NI * NJ;
  const whole = most + kernelBytes(own) + mean;
  expect(whole).toBeLessThan(MOST);
  // It is really counted: the kernel and five means are more than this.
  expect(whole).toBeGreaterThan(kernelBytes(own) + 5 * mean);
});

test('a flow through time, in strips and looked at as a whole, does so too', () => {
  const before = held();
  const own = setup();
  const flow = apartFlow(own);
  flow.advance(0.8, 1e-3);
  const [{ pressure }] = flow.fields as [Field];
  const whole = held() - before + kernelBytes(own);
  expect(pressure.length).toBeGreaterThan(NI * NJ);
  expect(whole).toBeLessThan(MOST);
  expect(whole).toBeGreaterThan(kernelBytes(own) + 8 * 9 * NI * NJ);
});
