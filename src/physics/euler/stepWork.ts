/** The parts that a step is made of: by the reference here, by a kernel in kernel/kernelWork.ts. */

import type { Problem } from '../../numerics/problem.ts';
import { type Field, type FieldRoom, type GasPair, plainRoom } from './field.ts';
import type { Tangent } from './fieldGas.ts';
import { inflowFor } from './inflow.ts';
import type { MeshBlock } from './mesh.ts';
import { addInflow } from './residual.ts';
import { markShocks } from './shockMarks.ts';
import { keep, keptFor, restore, settle, takeStage } from './stage.ts';
import { ownSteps, shortenTo, shortestStep } from './timeSteps.ts';

export interface StepWork {
  /** Where each block’s field is to be kept. */ readonly rooms: readonly FieldRoom[];
  on(fields: readonly Field[]): WholeParts;
}

/** Each for all blocks. */
export interface StepParts {
  /** Note the fields as they are, and bring them back. */ keep(): void;
  restore(): void;
  markShocks(): void;
  /** See takeStage; ghosts and marks must be filled. */ stage(which: 0 | 1, flat: boolean): Problem | null;
  /** New tangents: in cells of mixed gas, and in `all`. */ settle(all: boolean): Problem | null;
  /** [s] of each block the shortest of its cells’ longest steps */ shortest(): readonly number[];
  /** Each cell its own step from now on, none longer than `spread` times the shortest; or all the same. */ ownSteps(
    courant: number,
    spread: number,
  ): void;
  sameSteps(seconds: number): void;
}

export interface WholeParts extends StepParts {
  /** The same for some of the blocks, in rising order, and for no other: of a flow whose blocks step apart. */ among(
    blocks: readonly number[],
  ): StepParts;
}

export function referenceWork(meshes: readonly MeshBlock[], gases: GasPair): StepWork {
  return {
    rooms: meshes.map(plainRoom),
    on: (fields) => {
      const inflows = fields.map(inflowFor);
      const before = fields.map(keptFor);
      const seconds = fields.map(({ density }) => new Float64Array(density.length));
      const tangent: Tangent = { kappa: 1, eta: 0, zeta: 0 };
      const among = (blocks: readonly number[]): StepParts => ({
        keep() {
          for (const b of blocks) keep(fields[b]!, before[b]!);
        },
        restore() {
          for (const b of blocks) restore(fields[b]!, before[b]!);
        },
        markShocks() {
          for (const b of blocks) markShocks(fields[b]!);
        },
        stage: (which, flat) =>
          inAll(blocks, (b) => {
            addInflow(fields[b]!, inflows[b]!, flat);
            return takeStage(fields[b]!, inflows[b]!, before[b]!, seconds[b]!, which);
          }),
        settle: (every) => inAll(blocks, (b) => settle(fields[b]!, gases, tangent, every)),
        shortest: () => blocks.map((b) => shortestStep(fields[b]!)),
        ownSteps(courant, spread) {
          for (const b of blocks) ownSteps(fields[b]!, courant, seconds[b]!);
          if (spread < Number.POSITIVE_INFINITY)
            shortenTo(
              blocks.map((b) => seconds[b]!),
              spread * courant * Math.min(...blocks.map((b) => shortestStep(fields[b]!))),
            );
        },
        sameSteps(all) {
          for (const b of blocks) seconds[b]!.fill(all);
        },
      });
      return { ...among(fields.map((_, b) => b)), among };
    },
  };
}

/** Every block, even where one broke: a stage also notes what it began from. */
function inAll(blocks: readonly number[], each: (block: number) => Problem | null): Problem | null {
  let first: Problem | null = null;
  for (const block of blocks) {
    const broken = each(block);
    first ??= broken;
  }
  return first;
}
