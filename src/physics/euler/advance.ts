/** A field in time: Heun’s two stages that keep what one stage keeps (Shu & Osher 1988), and a way back where one breaks. */

import { type Problem, ProblemError } from '../../numerics/problem.ts';
import { type Field, type FlowPoint, fieldOn, type GasPair } from './field.ts';
import type { Tangent } from './fieldGas.ts';
import { fillGhosts, fillMarks } from './ghosts.ts';
import { inflowFor } from './inflow.ts';
import type { MeshBlock } from './mesh.ts';
import { addInflow } from './residual.ts';
import { markShocks } from './shockMarks.ts';
import { cellFrom } from './sideGeometry.ts';
import { markWalls, requireClosed, type SidePart } from './sides.ts';
import { keep, keptFor, lessBlurred, restore, settle, takeStage } from './stage.ts';
import { ownSteps, shortestStep } from './timeSteps.ts';

export interface FlowSetup {
  readonly blocks: readonly { readonly mesh: MeshBlock; readonly sides: readonly SidePart[] }[];
  readonly gases: GasPair;
  /** The flow to begin with, at the middle of each cell. */ readonly start: (
    x: number,
    y: number,
    block: number,
    i: number,
    j: number,
  ) => FlowPoint;
}

export interface Flow {
  readonly fields: readonly Field[];
  /** [s] since the beginning; stands still while each cell takes its own steps */ readonly time: number;
  /** Steps taken, and how many of them at first order somewhere because the second broke. */ readonly steps: number;
  readonly rescued: number;
  /** [s] the longest step that is stable for all cells, times the share `courant` */ stableStep(
    courant: number,
  ): number;
  /** One step of `seconds`. @throws ProblemError where the field breaks; it then is as before the step. */ step(
    seconds: number,
  ): void;
  /** What goes out through a part of a side, by the fluxes of the faces themselves. */ through(
    block: number,
    part: Pick<SidePart, 'side' | 'from' | 'to'>,
  ): SideFlow;
  /** One step, each cell its own longest: towards a steady flow, not through time. `blurred`: at first order. */ relax(
    courant: number,
    blurred?: boolean,
  ): void;
}

/** Out of a block each second: round fields for the whole turn, flat ones a metre deep. */
export interface SideFlow {
  /** [kg/s] */ readonly mass: number;
  /** Momentum, pressure counted [N]; of a round field along the axis only. */ readonly x: number;
  /** [N]; null for a round field, whose sideways push cancels */ readonly y: number | null;
  /** [W] */ readonly energy: number;
  /** Of the inner gas [kg/s]. */ readonly share: number;
}

/** How often a step is tried with more and more cells without slopes. */
const TRIES = 6;

/** @throws ProblemError where a side of a block is open or the start is no flow */
export function newFlow({ blocks, gases, start }: FlowSetup): Flow {
  for (const { mesh, sides } of blocks) requireClosed(mesh, sides);
  const fields = blocks.map(({ mesh }, block) =>
    fieldOn(mesh, gases, (x, y, i, j) => start(x, y, block, i, j)),
  );
  for (const [i, { sides }] of blocks.entries()) markWalls(fields[i]!, sides);
  const inflows = fields.map(inflowFor);
  const before = fields.map(keptFor);
  const own = fields.map(({ density }) => new Float64Array(density.length));
  const state = { time: 0, steps: 0, rescued: 0 };

  function findInflow(firstOrder: boolean): void {
    for (const [i, { sides }] of blocks.entries()) fillGhosts(fields, i, sides, gases);
    for (const field of fields) markShocks(field);
    for (const [i, { sides }] of blocks.entries()) fillMarks(fields, i, sides);
    for (const [i, field] of fields.entries()) addInflow(field, inflows[i]!, firstOrder);
  }

  function attemptStep(seconds: readonly Float64Array[] | number, firstOrder: boolean): Problem | null {
    for (const stage of [0, 1]) {
      findInflow(firstOrder);
      for (const [i, field] of fields.entries()) {
        const step = typeof seconds === 'number' ? seconds : seconds[i]!;
        const broken = takeStage(field, inflows[i]!, before[i]!, step, stage as 0 | 1);
        if (broken !== null) return broken;
      }
    }
    const tangent: Tangent = { kappa: 1, eta: 0, zeta: 0 };
    for (const field of fields) {
      const broken = settle(field, gases, tangent);
      if (broken !== null) return broken;
    }
    return null;
  }

  const keepAll = (): void => {
    for (const [i, field] of fields.entries()) keep(field, before[i]!);
  };
  const restoreAll = (): void => {
    for (const [i, field] of fields.entries()) restore(field, before[i]!);
  };

  /** Tried again without slopes where it broke, then without slopes anywhere. */
  function take(seconds: readonly Float64Array[] | number, blurred = false): void {
    keepAll();
    for (let tried = 0; ; tried++) {
      const broken = attemptStep(seconds, blurred || tried === TRIES);
      if (broken === null) {
        if (tried > 0) state.rescued += 1;
        break;
      }
      restoreAll();
      if (blurred || tried === TRIES) throw new ProblemError(broken);
    }
    for (const field of fields) lessBlurred(field);
    state.steps += 1;
  }

  return {
    fields,
    get time() {
      return state.time;
    },
    get steps() {
      return state.steps;
    },
    get rescued() {
      return state.rescued;
    },
    stableStep: (courant) => courant * Math.min(...fields.map(shortestStep)),
    step(seconds) {
      take(seconds);
      state.time += seconds;
    },
    through(block, { side, from, to }) {
      findInflow(false);
      const { mesh } = fields[block]!;
      const { mass, x, y, energy, share } = inflows[block]!;
      const round = mesh.symmetry === 'round';
      const ghosts = Array.from({ length: to - from }, (_, n) => cellFrom(mesh, side, from + n, -1));
      const sum = (of: Float64Array): number =>
        (round ? 2 * Math.PI : 1) * ghosts.reduce((total, ghost) => total + of[ghost]!, 0);
      return { mass: sum(mass), x: sum(x), y: round ? null : sum(y), energy: sum(energy), share: sum(share) };
    },
    relax(courant, blurred) {
      take(
        fields.map((field, i) => ownSteps(field, courant, own[i]!)),
        blurred,
      );
    },
  };
}
