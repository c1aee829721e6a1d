/** The parts that a step is made of: by the reference here, by a kernel in kernel/kernelWork.ts. */

import type { Problem } from '../../numerics/problem.ts';
import { type Field, type FieldRoom, type GasPair, plainRoom } from './field.ts';
import type { Tangent } from './fieldGas.ts';
import { type Inflow, inflowFor } from './inflow.ts';
import type { MeshBlock } from './mesh.ts';
import { addInflow } from './residual.ts';
import { markShocks } from './shockMarks.ts';
import { type Kept, keep, keptFor, restore, settle, takeStage } from './stage.ts';
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

/** What a block asks for when it steps: not made for a flow that is only looked at. */
interface StepRoom {
  readonly inflow: Inflow;
  readonly before: Kept;
  readonly seconds: Float64Array;
}

const roomFor = (field: Field): StepRoom => ({
  inflow: inflowFor(field),
  before: keptFor(field),
  seconds: new Float64Array(field.density.length),
});

export function referenceWork(meshes: readonly MeshBlock[], gases: GasPair): StepWork {
  return {
    rooms: meshes.map(plainRoom),
    on: (fields) => {
      let made: readonly StepRoom[] | null = null;
      const room = (b: number): StepRoom => {
        made ??= fields.map(roomFor);
        return made[b]!;
      };
      const tangent: Tangent = { kappa: 1, eta: 0, zeta: 0 };
      const among = (blocks: readonly number[]): StepParts => ({
        keep() {
          for (const b of blocks) keep(fields[b]!, room(b).before);
        },
        restore() {
          for (const b of blocks) restore(fields[b]!, room(b).before);
        },
        markShocks() {
          for (const b of blocks) markShocks(fields[b]!);
        },
        stage: (which, flat) =>
          inAll(blocks, (b) => {
            const { inflow, before, seconds } = room(b);
            addInflow(fields[b]!, inflow, flat);
            return takeStage(fields[b]!, inflow, before, seconds, which);
          }),
        settle: (every) => inAll(blocks, (b) => settle(fields[b]!, gases, tangent, every)),
        shortest: () => blocks.map((b) => shortestStep(fields[b]!)),
        ownSteps(courant, spread) {
          for (const b of blocks) ownSteps(fields[b]!, courant, room(b).seconds);
          if (spread < Number.POSITIVE_INFINITY)
            shortenTo(
              blocks.map((b) => room(b).seconds),
              spread * courant * Math.min(...blocks.map((b) => shortestStep(fields[b]!))),
            );
        },
        sameSteps(all) {
          for (const b of blocks) room(b).seconds.fill(all);
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
