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
  on(fields: readonly Field[]): StepParts;
}

/** Each for all blocks. */
export interface StepParts {
  /** Note the fields as they are, and bring them back. */ keep(): void;
  restore(): void;
  markShocks(): void;
  /** See takeStage; ghosts and marks must be filled. */ stage(which: 0 | 1, flat: boolean): Problem | null;
  /** New tangents: in cells of mixed gas, and in `all`. */ settle(all: boolean): Problem | null;
  /** [s] the shortest of all cells’ longest steps */ shortest(): number;
  /** Each cell its own step from now on, none longer than `spread` times the shortest; or all the same. */ ownSteps(
    courant: number,
    spread: number,
  ): void;
  sameSteps(seconds: number): void;
}

export function referenceWork(meshes: readonly MeshBlock[], gases: GasPair): StepWork {
  return {
    rooms: meshes.map(plainRoom),
    on: (fields) => {
      const inflows = fields.map(inflowFor);
      const before = fields.map(keptFor);
      const seconds = fields.map(({ density }) => new Float64Array(density.length));
      const tangent: Tangent = { kappa: 1, eta: 0, zeta: 0 };
      return {
        keep() {
          for (const [b, field] of fields.entries()) keep(field, before[b]!);
        },
        restore() {
          for (const [b, field] of fields.entries()) restore(field, before[b]!);
        },
        markShocks() {
          for (const field of fields) markShocks(field);
        },
        stage: (which, flat) =>
          inAll(fields, (field, b) => {
            addInflow(field, inflows[b]!, flat);
            return takeStage(field, inflows[b]!, before[b]!, seconds[b]!, which);
          }),
        settle: (every) => inAll(fields, (field) => settle(field, gases, tangent, every)),
        shortest: () => Math.min(...fields.map(shortestStep)),
        ownSteps(courant, spread) {
          for (const [b, field] of fields.entries()) ownSteps(field, courant, seconds[b]!);
          if (spread < Number.POSITIVE_INFINITY)
            shortenTo(seconds, spread * courant * Math.min(...fields.map(shortestStep)));
        },
        sameSteps(all) {
          for (const each of seconds) each.fill(all);
        },
      };
    },
  };
}

/** Every block, even where one broke: a stage also notes what it began from. */
function inAll(
  fields: readonly Field[],
  each: (field: Field, block: number) => Problem | null,
): Problem | null {
  let first: Problem | null = null;
  for (const [b, field] of fields.entries()) {
    const broken = each(field, b);
    first ??= broken;
  }
  return first;
}
