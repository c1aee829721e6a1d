/** The step of a field in WebAssembly, from the sources in kernels/flow: compiled once, the same equations on 64 or 32 bits. */

import { KERNEL_BYTES, MEMORY_KIND_AT } from './bytes.ts';
import type { StepTeam } from './stepTeam.ts';

export interface FlowKernel {
  readonly bits: 64 | 32;
  readonly module: WebAssembly.Module;
  /** Threads that take a share of each step; null: none but this one. */ readonly team: StepTeam | null;
}

/** By what memory they take: one of their own, or a shared one. */
const compiled = new Map<boolean, WebAssembly.Module | null>();

/**
 * Null where this machine runs no WebAssembly with vectors: the reference serves there. Without a team where it has no memory
 * that threads share.
 */
export function flowKernel(bits: 64 | 32, team: StepTeam | null = null): FlowKernel | null {
  const shared = team === null ? null : moduleFor(true);
  if (shared !== null) return { bits, module: shared, team };
  const module = moduleFor(false);
  return module === null ? null : { bits, module, team: null };
}

function moduleFor(shared: boolean): WebAssembly.Module | null {
  const module = compiled.get(shared) ?? compile(shared);
  compiled.set(shared, module);
  return module;
}

function compile(shared: boolean): WebAssembly.Module | null {
  if (shared && typeof SharedArrayBuffer === 'undefined') return null;
  try {
    const text = atob(KERNEL_BYTES);
    const bytes = Uint8Array.from(text, (letter) => letter.charCodeAt(0));
    if (shared) bytes[MEMORY_KIND_AT] = 3;
    return new WebAssembly.Module(bytes);
  } catch {
    return null;
  }
}
