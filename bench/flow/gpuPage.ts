/** In a page: the step of a flow field by the graphics processor, and how fast the device copies. */

import { cellAt, gpuFlow, meshBlock, newFlow, perfectFieldGas } from '../../src/physics/euler/index.ts';

export interface GpuTimes {
  /** What the adapter says of itself. */ readonly adapter: string;
  /** [s] a step, the least; [B/s] read and written by a copy, the greatest; sum of p ρ */ readonly step: number;
  readonly copied: number;
  readonly sum: number;
  /** The same by the reference. */ readonly referenceSum: number;
}

const [NI, NJ] = [512, 256];
/** Bytes of a copy: far more than a cache holds. */
const COPY = 128 * 2 ** 20;

/** Null: no adapter but one in software. */
export async function hardwareTimes(turns: number, steps: number): Promise<GpuTimes | null> {
  const adapter = await navigator.gpu?.requestAdapter();
  return !adapter || isSoftware(adapter) ? null : times(turns, steps);
}

function isSoftware({ info }: GPUAdapter): boolean {
  return info.isFallbackAdapter || /swiftshader|llvmpipe/i.test(`${info.architecture} ${info.description}`);
}

/** Null: no adapter. */
export async function times(turns: number, steps: number): Promise<GpuTimes | null> {
  const adapter = await navigator.gpu?.requestAdapter({ powerPreference: 'high-performance' });
  if (!adapter) return null;
  const { vendor, architecture, description } = adapter.info;
  const device = await adapter.requestDevice();
  const [flow, reference] = [blast(), blast()];
  const gpu = await gpuFlow(device, flow);
  let step = Number.POSITIVE_INFINITY;
  for (let turn = 0; turn < turns; turn++) {
    const from = performance.now();
    await gpu.relax(0.3, steps);
    step = Math.min(step, (performance.now() - from) / 1e3 / steps);
  }
  for (let n = 0; n < turns * steps; n++) reference.relax(0.3);
  const copied = await copySpeed(device, turns);
  return {
    adapter: [vendor, architecture, description].filter((word) => word !== '').join(' '),
    step,
    copied,
    sum: sumOf(flow),
    referenceSum: sumOf(reference),
  };
}

async function copySpeed(device: GPUDevice, turns: number): Promise<number> {
  const usage = 0x4 | 0x8;
  const [from, to] = [0, 1].map(() => device.createBuffer({ size: COPY, usage })) as [GPUBuffer, GPUBuffer];
  const copies = 8;
  let greatest = 0;
  for (let turn = 0; turn <= turns; turn++) {
    const began = performance.now();
    const encoder = device.createCommandEncoder();
    for (let n = 0; n < copies; n++) encoder.copyBufferToBuffer(from, 0, to, 0, COPY);
    device.queue.submit([encoder.finish()]);
    await device.queue.onSubmittedWorkDone();
    // Of the first the memory is only being laid out.
    if (turn > 0) greatest = Math.max(greatest, (2 * copies * COPY) / ((performance.now() - began) / 1e3));
  }
  from.destroy();
  to.destroy();
  return greatest;
}

/** The block of the other measurements. */
function blast() {
  const air = perfectFieldGas(1.4);
  const mesh = meshBlock('flat', NI, NJ, (i, j) => [
    i / 256 + 0.001 * Math.sin(0.1 * j),
    j / 256 + 0.001 * Math.sin(0.1 * i),
  ]);
  const sides = (['iLow', 'iHigh', 'jLow', 'jHigh'] as const).map((side) => ({
    side,
    from: 0,
    to: side.startsWith('i') ? NJ : NI,
    kind: { is: 'wall' } as const,
  }));
  return newFlow({
    blocks: [{ mesh, sides }],
    gases: { inner: air, outer: air },
    start: (x, y) => ({
      density: 1 + 0.3 * Math.sin(3 * x),
      u: Math.cos(2 * y),
      v: 0.5,
      pressure: (x - 1) ** 2 + (y - 0.5) ** 2 < 0.04 ? 10 : 1,
      share: 0,
    }),
  });
}

function sumOf({ fields }: ReturnType<typeof newFlow>): number {
  const { mesh, pressure, density } = fields[0]!;
  let sum = 0;
  for (let j = 0; j < NJ; j++)
    for (let i = 0; i < NI; i++) sum += pressure[cellAt(mesh, i, j)]! * density[cellAt(mesh, i, j)]!;
  return sum;
}
