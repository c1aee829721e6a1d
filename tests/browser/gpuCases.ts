/** The flows that a kernel is held against, by the graphics processor of a page; and engines. */

import { ProblemError } from '../../src/numerics/problem.ts';
import { type Flow, flowKernel, type GpuFlow, gpuFlow, newFlow } from '../../src/physics/euler/index.ts';
import { boxSetup, burstSetup, type CaseFields, told } from '../physics/euler/kernel/kernelCases.ts';
import { bell, leftBell, plug } from './gpuEngines.ts';

export type GpuCase = CaseFields & { readonly steps: number; readonly problem: string | null };

let device: Promise<GPUDevice> | null = null;

function processor(): Promise<GPUDevice> {
  device ??= navigator.gpu.requestAdapter().then((adapter) => adapter!.requestDevice());
  return device;
}

async function takenOn(flow: Flow, work: (gpu: GpuFlow) => Promise<void>): Promise<GpuCase> {
  const gpu = await gpuFlow(await processor(), flow);
  let problem: string | null = null;
  try {
    await work(gpu);
  } catch (error) {
    if (!(error instanceof ProblemError)) throw error;
    problem = error.problem.what;
  }
  const { steps, rescued } = gpu;
  gpu.destroy();
  return { ...told({ fields: flow.fields, time: 0, rescued }), steps, problem };
}

export function burst(steps: number, own: boolean): Promise<GpuCase> {
  return takenOn(newFlow(burstSetup()), async (gpu) => {
    if (own) await gpu.relax(0.6, steps);
    else for (let n = 0; n < steps; n++) await gpu.step(await gpu.stableStep(0.5));
  });
}

export function box(which: 'blast' | 'tossed', courant: number, steps: number): Promise<GpuCase> {
  return takenOn(newFlow(boxSetup(which)), async (gpu) => {
    for (let n = 0; n < steps; n++) await gpu.step(await gpu.stableStep(courant));
  });
}

const engines = { bell, 'left bell': leftBell, plug };

/** An engine in the air of a place, begun by the kernel: chamber, far air, a side pressed on, joined blocks; a plug’s corner. */
export function engine(which: keyof typeof engines, steps: number): Promise<GpuCase> {
  const { flow } = engines[which](flowKernel(32));
  return takenOn(flow, (gpu) => gpu.relax(0.5, steps));
}

/** What is told of a field whose processor goes away. */
export async function lost(): Promise<string | null> {
  const adapter = await navigator.gpu.requestAdapter();
  const own = await adapter!.requestDevice();
  const gpu = await gpuFlow(own, newFlow(boxSetup('blast')));
  own.destroy();
  try {
    await gpu.relax(0.5, 10);
    return null;
  } catch (error) {
    if (error instanceof ProblemError) return error.problem.code;
    throw error;
  }
}

/** What the adapter says of itself; null: there is none. */
export async function adapterIs(): Promise<string | null> {
  const adapter = await navigator.gpu?.requestAdapter();
  return adapter
    ? `${adapter.info.vendor} ${adapter.info.architecture} ${adapter.info.description}`.trim()
    : null;
}
