/** The parts that a step is made of: by the reference here, by a kernel in kernel/kernelWork.ts. */

import type { Problem } from '../../numerics/problem.ts';
import { type Field, type FieldRoom, type GasPair, plainRoom } from './field.ts';
import type { Tangent } from './fieldGas.ts';
import { inflowFor } from './inflow.ts';
import type { MeshBlock } from './mesh.ts';
import { addInflow } from './residual.ts';
import { markShocks } from './shockMarks.ts';
import { keep, keptFor, restore, settle, takeStage } from './stage.ts';
import { ownSteps, shortestStep } from './timeSteps.ts';

export interface StepWork {
  /** Where each block’s field is to be kept. */ readonly rooms: readonly FieldRoom[];
  on(fields: readonly Field[]): StepParts;
}

/** Blocks by their place in the list. */
export interface StepParts {
  /** Note the fields as they are, and bring them back. */ keep(): void;
  restore(): void;
  markShocks(block: number): void;
  /** See takeStage; ghosts and marks must be filled. */
  stage(block: number, which: 0 | 1, flat: boolean): Problem | null;
  /** New tangents: in cells of mixed gas, and in `all`. */ settle(
    block: number,
    all: boolean,
  ): Problem | null;
  /** [s] the shortest of all cells’ longest steps */ shortest(): number;
  /** Each cell its own step from now on, or all the same. */ ownSteps(courant: number): void;
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
        markShocks(b) {
          markShocks(fields[b]!);
        },
        stage(b, which, flat) {
          addInflow(fields[b]!, inflows[b]!, flat);
          return takeStage(fields[b]!, inflows[b]!, before[b]!, seconds[b]!, which);
        },
        settle: (b, every) => settle(fields[b]!, gases, tangent, every),
        shortest: () => Math.min(...fields.map(shortestStep)),
        ownSteps(courant) {
          for (const [b, field] of fields.entries()) ownSteps(field, courant, seconds[b]!);
        },
        sameSteps(all) {
          for (const each of seconds) each.fill(all);
        },
      };
    },
  };
}
