/** The buffers of a flow on a graphics processor, and the passes of a step over them. */

import { ProblemError } from '../../../numerics/problem.ts';
import { flowShaders } from './shaders.ts';
import { STATUS } from './words.ts';

export type Pass =
  | 'steps'
  | 'shortest'
  | 'ghosts'
  | 'shocks'
  | 'faces'
  | 'advance'
  | 'settle'
  | 'corners'
  | 'finish'
  | 'count';

/** Bits of the standard (W3C, WebGPU, buffer usages, map modes, shader stages), which a library of types does not hold. */
const USAGE = { MAP_READ: 0x1, COPY_SRC: 0x4, COPY_DST: 0x8, UNIFORM: 0x40, STORAGE: 0x80 } as const;
const MAP_TO_READ = 0x1;
const COMPUTE = 0x4;

/** Threads of a group, as the shaders have it. */
const GROUP = 64;
/** Words of the case, see shaderHead. */
const CASE_WORDS = 20;

export interface DeviceContents {
  readonly field: Float32Array<ArrayBuffer>;
  readonly mesh: Float32Array<ArrayBuffer>;
  readonly lists: Uint32Array<ArrayBuffer>;
  readonly numbers: Float32Array<ArrayBuffer>;
  readonly cells: number;
}

export interface FlowDevice {
  /** Entries that the passes go through. */ write(words: Uint32Array<ArrayBuffer>): void;
  status(words: Uint32Array<ArrayBuffer>, from: number): void;
  /** One after the other, each over so many entries. */ run(
    passes: readonly PassOver[],
    times: number,
  ): void;
  readStatus(): Promise<Uint32Array>;
  readField(bytes: number): Promise<Float32Array>;
  destroy(): void;
}

/** Entries that one pass can go through on this device. */
export function mostEntries(device: GPUDevice): number {
  return device.limits.maxComputeWorkgroupsPerDimension * GROUP;
}

export interface PassOver {
  readonly pass: Pass;
  readonly stage?: 0 | 1;
  readonly over: number;
}

/** @throws ProblemError where the device does not take the shaders or has no room */
export async function flowDevice(device: GPUDevice, contents: DeviceContents): Promise<FlowDevice> {
  device.pushErrorScope('out-of-memory');
  device.pushErrorScope('validation');
  const storage = USAGE.STORAGE | USAGE.COPY_DST | USAGE.COPY_SRC;
  const room = (size: number): GPUBuffer => device.createBuffer({ size: Math.max(16, size), usage: storage });
  const filled = (data: Float32Array<ArrayBuffer> | Uint32Array<ArrayBuffer>): GPUBuffer => {
    const buffer = room(data.byteLength);
    device.queue.writeBuffer(buffer, 0, data);
    return buffer;
  };
  const { cells } = contents;
  const field = filled(contents.field);
  const status = room(4 * STATUS.words);
  const flow = device.createBuffer({
    size: 4 * CASE_WORDS,
    usage: USAGE.UNIFORM | USAGE.COPY_DST,
  });
  const buffers = [
    flow,
    field,
    filled(contents.mesh),
    room(4 * 12 * cells),
    room(4 * 2 * cells),
    filled(contents.lists),
    filled(contents.numbers),
    status,
  ];
  const { layout, pipelineOf } = pipelinesOf(device);
  const group = device.createBindGroup({
    layout,
    entries: buffers.map((buffer, binding) => ({ binding, resource: { buffer } })),
  });

  async function read(from: GPUBuffer, bytes: number): Promise<ArrayBuffer> {
    const taken = device.createBuffer({ size: bytes, usage: USAGE.MAP_READ | USAGE.COPY_DST });
    const encoder = device.createCommandEncoder();
    encoder.copyBufferToBuffer(from, 0, taken, 0, bytes);
    device.queue.submit([encoder.finish()]);
    try {
      await taken.mapAsync(MAP_TO_READ);
      return taken.getMappedRange().slice(0);
    } catch (error) {
      throw lost(error instanceof Error ? error.message : String(error));
    } finally {
      taken.destroy();
    }
  }

  const [invalid, noRoom] = [await device.popErrorScope(), await device.popErrorScope()];
  const refused = invalid ?? noRoom;
  if (refused !== null) {
    for (const buffer of buffers) buffer.destroy();
    compiled.delete(device);
    throw notTaken(refused.message);
  }
  return {
    write: (words) => device.queue.writeBuffer(flow, 0, words),
    status: (words, from) => device.queue.writeBuffer(status, 4 * from, words),
    run(passes, times) {
      const encoder = device.createCommandEncoder();
      const pass = encoder.beginComputePass();
      pass.setBindGroup(0, group);
      for (let n = 0; n < times; n++)
        for (const { pass: name, stage = 0, over } of passes) {
          if (over === 0) continue;
          pass.setPipeline(pipelineOf(name, stage));
          pass.dispatchWorkgroups(name === 'count' ? 1 : Math.ceil(over / GROUP));
        }
      pass.end();
      device.queue.submit([encoder.finish()]);
    },
    readStatus: async () => new Uint32Array(await read(status, 4 * STATUS.words)),
    readField: async (bytes) => new Float32Array(await read(field, bytes)),
    destroy() {
      for (const buffer of buffers) buffer.destroy();
    },
  };
}

/** Compiled once a device: it takes longer than many steps. */
const compiled = new WeakMap<GPUDevice, ReturnType<typeof pipelines>>();

function pipelinesOf(device: GPUDevice): ReturnType<typeof pipelines> {
  const made = compiled.get(device) ?? pipelines(device);
  compiled.set(device, made);
  return made;
}

function pipelines(device: GPUDevice) {
  const kinds = [
    'uniform',
    'storage',
    'read-only-storage',
    'storage',
    'storage',
    'read-only-storage',
    'read-only-storage',
    'storage',
  ] as const;
  const layout = device.createBindGroupLayout({
    entries: kinds.map((type, binding) => ({
      binding,
      visibility: COMPUTE,
      buffer: { type },
    })),
  });
  const pipelineLayout = device.createPipelineLayout({ bindGroupLayouts: [layout] });
  const module = device.createShaderModule({ code: flowShaders() });
  const made = new Map<string, GPUComputePipeline>();
  const pipelineOf = (entryPoint: Pass, stage: 0 | 1): GPUComputePipeline => {
    const key = `${entryPoint} ${stage}`;
    const pipeline =
      made.get(key) ??
      device.createComputePipeline({
        layout: pipelineLayout,
        compute: { module, entryPoint, constants: { stage } },
      });
    made.set(key, pipeline);
    return pipeline;
  };
  // All of them at once, so that what is refused is told at the beginning.
  for (const pass of PASSES) pipelineOf(pass, 0);
  for (const pass of STAGED) pipelineOf(pass, 1);
  return { layout, pipelineOf };
}
/** Those that differ between the two stages. */
const STAGED: readonly Pass[] = ['ghosts', 'shocks', 'faces', 'advance'];
const PASSES: readonly Pass[] = [...STAGED, 'steps', 'shortest', 'settle', 'corners', 'finish', 'count'];

function notTaken(message: string): ProblemError {
  return new ProblemError({
    code: 'flow-gpu-refused',
    what: `The graphics processor does not take the flow: ${message}.`,
    mend: 'Compute it without one, as plumeline flow does, or on a coarser mesh.',
  });
}

function lost(message: string): ProblemError {
  return new ProblemError({
    code: 'flow-gpu-lost',
    what: `The graphics processor was lost while it computed a flow: ${message}.`,
    mend: 'Ask again, or compute it without one, as plumeline flow does.',
  });
}
