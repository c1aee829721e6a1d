/** The share of a step that one thread does: rows of the blocks, the same number of cells for each thread. */

import type { KernelCalls } from './kernelCalls.ts';
import { ORDER, type Ordered, type Talk } from './talk.ts';

/** Where the kernel finds a field, the same for all of its threads. */
export interface FieldPlaces {
  readonly blocks: readonly { readonly words: number; readonly ni: number; readonly nj: number }[];
  readonly inner: number;
  readonly outer: number;
  /** How many threads, and where they talk. */ readonly threads: number;
  readonly talk: number;
}

/** Rows at a time when tangents are renewed: those of a table take long, so that each thread takes some everywhere. */
const STRIPE = 4;

/**
 * One that carries orders out. Orders’ flags: edges: first order; stage: which, and first order; settle: all.
 * @param hand number of the thread, 0 the one that gives the orders
 */
export function shareOf(
  { blocks, inner, outer, threads }: FieldPlaces,
  calls: KernelCalls,
  { shortest, found }: Talk,
  hand: number,
): (order: Ordered) => void {
  const parts = partsOf(blocks, threads, hand);
  const tell = (block: number, value: number): void => {
    found[hand * blocks.length + block] = value;
  };
  return ({ kind, first, second, courant }) => {
    switch (kind) {
      case ORDER.shocks:
        for (const { words, from, to } of parts) calls.shocks(words, from, to);
        return;
      case ORDER.edges:
        for (const { words, from, to } of parts) calls.edges(words, hand, from, to, first);
        return;
      case ORDER.stage:
        for (const block of blocks.keys()) tell(block, 0);
        for (const { block, words, from, to } of parts)
          tell(block, calls.stage(words, hand, from, to, first, second));
        return;
      case ORDER.steps:
        shortest[hand] = Number.POSITIVE_INFINITY;
        for (const { words, from, to } of parts)
          shortest[hand] = Math.min(shortest[hand]!, calls.steps(words, from, to, courant));
        return;
      case ORDER.settle:
        for (const [block, { words, nj }] of blocks.entries()) {
          let broken = 0;
          for (let j = STRIPE * hand; j < nj && broken === 0; j += STRIPE * threads)
            broken = calls.settle(words, j, Math.min(j + STRIPE, nj), inner, outer, first);
          tell(block, broken);
        }
    }
  };
}

interface Part {
  readonly block: number;
  readonly words: number;
  readonly from: number;
  readonly to: number;
}

/** Rows of each block whose first cells lie in this thread’s part of all cells, one block behind the other. */
export function partsOf(blocks: FieldPlaces['blocks'], threads: number, hand: number): readonly Part[] {
  const all = blocks.reduce((sum, { ni, nj }) => sum + ni * nj, 0);
  const [low, high] = [(all * hand) / threads, (all * (hand + 1)) / threads];
  let before = 0;
  return blocks.flatMap(({ words, ni, nj }, block) => {
    const row = (cells: number): number => Math.min(nj, Math.max(0, Math.ceil((cells - before) / ni)));
    const [from, to] = [row(low), row(high)];
    before += ni * nj;
    return to > from ? [{ block, words, from, to }] : [];
  });
}
