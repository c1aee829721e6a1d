/** The parts of a step by the kernel: fields live in its memory, in one thread or shared by several. */

import type { Problem } from '../../../numerics/problem.ts';
import { CELL_VALUES, type Field, type GasPair } from '../field.ts';
import { cellAt, type MeshBlock } from '../mesh.ts';
import { blurAround, brokeAt } from '../stage.ts';
import type { StepWork } from '../stepWork.ts';
import { shortenTo } from '../timeSteps.ts';
import type { FlowKernel } from './flowKernel.ts';
import { bytesFor, type KernelBlock, layOut, placesIn, writeGas, writeWalls } from './kernelMemory.ts';
import { type FieldPlaces, partsOf } from './share.ts';
import { sharedOrders } from './sharedOrders.ts';
import { ORDER, type Talk, talkBytes, talkIn } from './talk.ts';

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
  const steps = (courant: number): void => order({ kind: ORDER.steps, first: 0, second: 0, courant });
  return {
    rooms: blocks.map(({ room }) => room),
    on: (fields) => {
      for (const [b, each] of fields.entries()) writeWalls(each, blocks[b]!);
      return {
        // Kept by the first stage itself.
        keep: () => undefined,
        restore() {
          for (const [b, { mesh, ...values }] of fields.entries())
            for (const [k, kept] of blocks[b]!.kept.entries())
              for (let j = 0; j < mesh.nj; j++) {
                const from = cellAt(mesh, 0, j);
                values[CELL_VALUES[k]!].set(kept.subarray(from, from + mesh.ni), from);
              }
        },
        markShocks: () => order({ kind: ORDER.shocks, first: 0, second: 0, courant: 0 }),
        stage(which, flat) {
          const blurred = flat ? 1 : 0;
          order({ kind: ORDER.edges, first: blurred, second: 0, courant: 0 });
          order({ kind: ORDER.stage, first: which, second: blurred, courant: 0 });
          return brokenIn(fields, brokenCells(field, blocks, talk));
        },
        settle(every) {
          order({ kind: ORDER.settle, first: every ? 1 : 0, second: 0, courant: 0 });
          return brokenIn(fields, firstCells(field, talk));
        },
        shortest() {
          steps(1);
          return Math.min(...talk.shortest);
        },
        ownSteps(courant, spread) {
          steps(courant);
          if (spread < Number.POSITIVE_INFINITY)
            shortenTo(
              blocks.map(({ seconds }) => seconds),
              spread * Math.min(...talk.shortest),
            );
        },
        sameSteps(seconds) {
          for (const block of blocks) block.seconds.fill(seconds);
        },
      };
    },
  };
}

/** Of each block the cells that broke in a stage, as the threads listed them, in rising order. */
function brokenCells(
  { blocks, threads }: FieldPlaces,
  rooms: readonly KernelBlock[],
  { found }: Talk,
): readonly (readonly number[])[] {
  const hands = Array.from({ length: threads }, (_, hand) => hand);
  return blocks.map(({ ni }, b) =>
    hands.flatMap((hand) => {
      const count = found[hand * blocks.length + b]!;
      if (count === 0) return [];
      const from = ni * partsOf(blocks, threads, hand).find(({ block }) => block === b)!.from;
      return [...rooms[b]!.broken.subarray(from, from + count)];
    }),
  );
}

/** Of each block the first cell for which no tangent was found; what lies behind it was not looked at. */
function firstCells({ blocks, threads }: FieldPlaces, { found }: Talk): readonly (readonly number[])[] {
  return blocks.map((_, b) => {
    const cells = Array.from({ length: threads }, (__, hand) => found[hand * blocks.length + b]!);
    const broken = cells.filter((cell) => cell > 0);
    return broken.length === 0 ? [] : [Math.min(...broken)];
  });
}

/** All are to go without slopes, the first is told. */
function brokenIn(fields: readonly Field[], cells: readonly (readonly number[])[]): Problem | null {
  let first: Problem | null = null;
  for (const [b, field] of fields.entries())
    for (const at of cells[b]!) {
      blurAround(field, at);
      first ??= brokeAt(field, at);
    }
  return first;
}
