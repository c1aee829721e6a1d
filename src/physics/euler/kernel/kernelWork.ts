/** The parts of a step by the kernel: fields live in its memory, in one thread or shared by several. */

import type { Problem } from '../../../numerics/problem.ts';
import { CELL_VALUES, type Field, type GasPair } from '../field.ts';
import { cellAt, type MeshBlock } from '../mesh.ts';
import { blurAround, brokeAt } from '../stage.ts';
import type { StepParts, StepWork } from '../stepWork.ts';
import { shortenTo } from '../timeSteps.ts';
import type { FlowKernel } from './flowKernel.ts';
import { bytesFor, type KernelBlock, layOut, placesIn, writeGas, writeWalls } from './kernelMemory.ts';
import { type FieldPlaces, partsOf } from './share.ts';
import { sharedOrders } from './sharedOrders.ts';
import { type Lot, ORDER, type Order, type Talk, talkBytes, talkIn } from './talk.ts';

/**
 * From so many cells on, in all and at once, a step is shared, over those of a whole field. Blocks that step apart take many short steps, in
 * which the sides, filled by one thread, and waiting weigh more.
 */
const SHARED = { whole: { inAll: 1, atOnce: 1 }, apart: { inAll: 4, atOnce: 0.2 } };

/** Bytes of a page of memory. */
const PAGE = 65_536;

export function kernelWork(kernel: FlowKernel, meshes: readonly MeshBlock[], gases: GasPair): StepWork {
  const { bits, team } = kernel;
  const cells = meshes.reduce((sum, { ni, nj }) => sum + ni * nj, 0);
  const threads = team === null || cells < team.fewest ? 1 : 1 + team.hands;
  const needed = bytesFor(meshes, bits, [gases.inner, gases.outer], threads);
  const pages = Math.ceil(needed / PAGE);
  const memory = new WebAssembly.Memory({ initial: pages, maximum: pages, shared: team !== null });
  const places = placesIn();
  const blocks = meshes.map((mesh) => layOut(mesh, bits, threads, memory, places));
  const inner = writeGas(gases.inner, memory, places);
  const field: FieldPlaces = {
    blocks: blocks.map(({ words }, b) => ({ words, ni: meshes[b]!.ni, nj: meshes[b]!.nj })),
    inner,
    outer: gases.inner === gases.outer ? inner : writeGas(gases.outer, memory, places),
    threads,
    talk: places.take(talkBytes(meshes.length, threads)),
  };
  const talk = talkIn(memory, field.talk, meshes.length, threads);
  const order = sharedOrders(kernel, memory, field, talk);
  const give = (lot: Lot, kind: Order, first: 0 | 1 = 0, second: 0 | 1 = 0, courant = 0): void =>
    order({ kind, first, second, courant, lot });
  let lots = 0;
  function among(
    chosen: readonly number[],
    fields: readonly Field[],
    { inAll, atOnce }: { readonly inAll: number; readonly atOnce: number },
  ): StepParts {
    const held = chosen.reduce((sum, b) => sum + meshes[b]!.ni * meshes[b]!.nj, 0);
    const pays = team !== null && cells >= inAll * team.fewest && held >= atOnce * team.fewest;
    const lot: Lot = { id: lots++, blocks: chosen, threads: pays ? threads : 1 };
    const hands = Array.from({ length: lot.threads }, (_, hand) => hand * meshes.length);
    const shortest = (courant: number): readonly number[] => {
      give(lot, ORDER.steps, 0, 0, courant);
      return chosen.map((b) => Math.min(...hands.map((first) => talk.shortest[first + b]!)));
    };
    return {
      // Kept by the first stage itself.
      keep: () => undefined,
      restore() {
        for (const b of chosen) bringBack(fields[b]!, blocks[b]!);
      },
      markShocks: () => give(lot, ORDER.shocks),
      stage(which, flat) {
        const blurred = flat ? 1 : 0;
        give(lot, ORDER.edges, blurred);
        give(lot, ORDER.stage, which, blurred);
        return hasBroken(hands, lot, talk) ? brokenIn(fields, brokenCells(field, lot, blocks, talk)) : null;
      },
      settle(every) {
        give(lot, ORDER.settle, every ? 1 : 0);
        return hasBroken(hands, lot, talk) ? brokenIn(fields, firstCells(field, lot, talk)) : null;
      },
      shortest: () => shortest(1),
      ownSteps(courant, spread) {
        const least = Math.min(...shortest(courant));
        if (spread < Number.POSITIVE_INFINITY)
          shortenTo(
            chosen.map((b) => blocks[b]!.seconds),
            spread * least,
          );
      },
      sameSteps(seconds) {
        for (const b of chosen) blocks[b]!.seconds.fill(seconds);
      },
    };
  }
  return {
    rooms: blocks.map(({ room }) => room),
    on: (fields) => {
      for (const [b, each] of fields.entries()) writeWalls(each, blocks[b]!);
      const all = fields.map((_, b) => b);
      return {
        ...among(all, fields, SHARED.whole),
        among: (chosen) => among(chosen, fields, SHARED.apart),
      };
    },
  };
}

function bringBack({ mesh, ...values }: Field, { kept }: KernelBlock): void {
  for (const [k, own] of kept.entries())
    for (let j = 0; j < mesh.nj; j++) {
      const from = cellAt(mesh, 0, j);
      values[CELL_VALUES[k]!].set(own.subarray(from, from + mesh.ni), from);
    }
}

/** @param hands where the findings of each thread begin */
function hasBroken(hands: readonly number[], { blocks }: Lot, { found }: Talk): boolean {
  for (const first of hands) for (const block of blocks) if (found[first + block]! > 0) return true;
  return false;
}

/** Of each block the cells that broke in a stage, as the threads listed them, in rising order. */
function brokenCells(
  { blocks }: FieldPlaces,
  lot: Lot,
  rooms: readonly KernelBlock[],
  { found }: Talk,
): BrokenCells {
  const parts = Array.from({ length: lot.threads }, (_, hand) => partsOf(blocks, lot, hand));
  return lot.blocks.map((block) => ({
    block,
    cells: parts.flatMap((own, hand) => {
      const count = found[hand * blocks.length + block]!;
      if (count === 0) return [];
      const from = blocks[block]!.ni * own.find((part) => part.block === block)!.from;
      return [...rooms[block]!.broken.subarray(from, from + count)];
    }),
  }));
}

/** Of each block the first cell for which no tangent was found; what lies behind it was not looked at. */
function firstCells({ blocks }: FieldPlaces, lot: Lot, { found }: Talk): BrokenCells {
  return lot.blocks.map((block) => {
    const cells = Array.from({ length: lot.threads }, (_, hand) => found[hand * blocks.length + block]!);
    const broken = cells.filter((cell) => cell > 0);
    return { block, cells: broken.length === 0 ? [] : [Math.min(...broken)] };
  });
}

type BrokenCells = readonly { readonly block: number; readonly cells: readonly number[] }[];

/** All are to go without slopes, the first is told. */
function brokenIn(fields: readonly Field[], broken: BrokenCells): Problem | null {
  let first: Problem | null = null;
  for (const { block, cells } of broken)
    for (const at of cells) {
      blurAround(fields[block]!, at);
      first ??= brokeAt(fields[block]!, at);
    }
  return first;
}
