/** The share of a step that one thread does: rows of the blocks, the same number of cells for each thread. */

import type { KernelCalls } from './kernelCalls.ts';
import { type Lot, ORDER, type Ordered, type Talk } from './talk.ts';

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
  { blocks, inner, outer }: FieldPlaces,
  calls: KernelCalls,
  { shortest, found }: Talk,
  hand: number,
): (order: Ordered) => void {
  const shares = new Map<Lot, readonly Part[]>();
  const partsIn = (lot: Lot): readonly Part[] => {
    const parts = shares.get(lot) ?? partsOf(blocks, lot, hand);
    shares.set(lot, parts);
    return parts;
  };
  const first = hand * blocks.length;
  return (order) => {
    const { kind, lot } = order;
    const parts = partsIn(lot);
    switch (kind) {
      case ORDER.shocks:
        for (const { words, from, to } of parts) calls.shocks(words, from, to);
        return;
      case ORDER.edges:
        for (const { words, from, to } of parts) calls.edges(words, hand, from, to, order.first);
        return;
      case ORDER.stage:
        for (const block of lot.blocks) found[first + block] = 0;
        for (const { block, words, from, to } of parts)
          found[first + block] = calls.stage(words, hand, from, to, order.first, order.second);
        return;
      case ORDER.steps:
        for (const block of lot.blocks) shortest[first + block] = Number.POSITIVE_INFINITY;
        for (const { block, words, from, to } of parts)
          shortest[first + block] = calls.steps(words, from, to, order.courant);
        return;
      case ORDER.settle: {
        let stripe = 0;
        for (const block of lot.blocks) {
          const { words, nj } = blocks[block]!;
          let broken = 0;
          for (let j = 0; j < nj; j += STRIPE, stripe++)
            if (stripe % lot.threads === hand && broken === 0)
              broken = calls.settle(words, j, Math.min(j + STRIPE, nj), inner, outer, order.first);
          found[first + block] = broken;
        }
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

/** Rows of each block of the lot whose first cells lie in this thread’s part of all its cells, one block behind the other. */
export function partsOf(
  blocks: FieldPlaces['blocks'],
  { blocks: chosen, threads }: Pick<Lot, 'blocks' | 'threads'>,
  hand: number,
): readonly Part[] {
  const all = chosen.reduce((sum, b) => sum + blocks[b]!.ni * blocks[b]!.nj, 0);
  const [low, high] = [(all * hand) / threads, (all * (hand + 1)) / threads];
  let before = 0;
  return chosen.flatMap((block) => {
    const { words, ni, nj } = blocks[block]!;
    const row = (cells: number): number => Math.min(nj, Math.max(0, Math.ceil((cells - before) / ni)));
    const [from, to] = [row(low), row(high)];
    before += ni * nj;
    return to > from ? [{ block, words, from, to }] : [];
  });
}
