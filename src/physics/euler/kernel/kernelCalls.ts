/** What the kernel can be called for. */

/**
 * The calls of the kernel, each for rows `from` up to but not with `to` of a block; `block` is the place of its words in the
 * memory, see layOut; `hand` the number of the thread.
 */
export interface KernelCalls {
  /** What a part asks of the rows beyond it: before any part is stepped. */
  readonly edges: (block: number, hand: number, from: number, to: number, flat: 0 | 1) => void;
  /** Forward (0), or forward again and the mean with what was before (1). @returns how many cells broke */
  readonly stage: (
    block: number,
    hand: number,
    from: number,
    to: number,
    which: 0 | 1,
    flat: 0 | 1,
  ) => number;
  readonly shocks: (block: number, from: number, to: number) => void;
  /** Writes each cell’s own seconds. @returns the shortest [s] */
  readonly steps: (block: number, from: number, to: number, courant: number) => number;
  /** New tangents. @returns the first cell that broke; 0: none */
  readonly settle: (
    block: number,
    from: number,
    to: number,
    inner: number,
    outer: number,
    all: 0 | 1,
  ) => number;
}

export function callsOf(
  { bits, module }: { readonly bits: 64 | 32; readonly module: WebAssembly.Module },
  memory: WebAssembly.Memory,
): KernelCalls {
  const { exports } = new WebAssembly.Instance(module, { env: { memory } });
  const call = <K extends keyof KernelCalls>(name: K): KernelCalls[K] =>
    exports[`${name}${bits}`] as unknown as KernelCalls[K];
  return {
    edges: call('edges'),
    stage: call('stage'),
    shocks: call('shocks'),
    steps: call('steps'),
    settle: call('settle'),
  };
}
