/** The step of a field in WebAssembly, from the sources in kernels/flow: compiled once, the same equations on 64 or 32 bits. */

import { KERNEL_BYTES } from './bytes.ts';

export interface FlowKernel {
  readonly bits: 64 | 32;
  readonly module: WebAssembly.Module;
}

/** The calls of the kernel; `block` is the place of a block’s words in its memory, see {@link layOut}. */
export interface KernelCalls {
  /** Forward (0), or forward again and the mean with what was before (1). @returns how many cells broke */
  readonly stage: (block: number, which: 0 | 1, flat: 0 | 1) => number;
  readonly shocks: (block: number) => void;
  /** Writes each cell’s own seconds. @returns the shortest [s] */
  readonly steps: (block: number, courant: number) => number;
  /** New tangents. @returns how many cells broke */
  readonly settle: (block: number, inner: number, outer: number, all: 0 | 1) => number;
}

let compiled: WebAssembly.Module | null | undefined;

/** Null where this machine runs no WebAssembly with vectors: the reference serves there. */
export function flowKernel(bits: 64 | 32): FlowKernel | null {
  compiled ??= compile();
  return compiled === null ? null : { bits, module: compiled };
}

function compile(): WebAssembly.Module | null {
  try {
    const text = atob(KERNEL_BYTES);
    return new WebAssembly.Module(Uint8Array.from(text, (letter) => letter.charCodeAt(0)));
  } catch {
    return null;
  }
}

export function callsOf({ bits, module }: FlowKernel, memory: WebAssembly.Memory): KernelCalls {
  const { exports } = new WebAssembly.Instance(module, { env: { memory } });
  const call = <K extends keyof KernelCalls>(name: K): KernelCalls[K] =>
    exports[`${name}${bits}`] as unknown as KernelCalls[K];
  return { stage: call('stage'), shocks: call('shocks'), steps: call('steps'), settle: call('settle') };
}
