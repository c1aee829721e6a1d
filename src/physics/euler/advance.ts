/** A field in time: Heun’s two stages that keep what one stage keeps (Shu & Osher 1988), and a way back where one breaks. */

import { type Problem, ProblemError } from '../../numerics/problem.ts';
import { mendCorners, type SharpCorner } from './corners.ts';
import { type Field, type FlowPoint, fieldOn, type GasPair } from './field.ts';
import { ghostFill, markFill } from './ghosts.ts';
import type { FlowKernel } from './kernel/flowKernel.ts';
import { kernelWork } from './kernel/kernelWork.ts';
import type { MeshBlock } from './mesh.ts';
import { type SideFlow, sideFlow } from './sideFlow.ts';
import { markWalls, requireClosed, type SidePart } from './sides.ts';
import { BLURRED_STEPS, lessBlurred, RENEWED, TRIES } from './stage.ts';
import { referenceWork, type StepWork } from './stepWork.ts';

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
  /** By what the steps are taken; absent or null: by the reference. */ readonly kernel?: FlowKernel | null;
  readonly corners?: readonly SharpCorner[];
  /**
   * Towards a steady state: the longest of the cells' own steps over the shortest; absent: any. A jet that flaps inside a nozzle pulsates
   * where its waves go by clocks too different.
   */
  readonly spread?: number;
  /** How the parts of a step are done; absent: by the kernel, or the reference. */
  readonly work?: (meshes: readonly MeshBlock[], gases: GasPair) => StepWork;
}

export interface Flow {
  /** As it was begun. */ readonly setup: FlowSetup;
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

/** @throws ProblemError where a side of a block is open or the start is no flow */
export function newFlow(setup: FlowSetup): Flow {
  const { blocks, gases, start, kernel, corners = [], spread = Number.POSITIVE_INFINITY } = setup;
  for (const { mesh, sides } of blocks) requireClosed(mesh, sides);
  const meshes = blocks.map(({ mesh }) => mesh);
  const work =
    setup.work?.(meshes, gases) ??
    (kernel == null ? referenceWork(meshes, gases) : kernelWork(kernel, meshes, gases));
  const fields = meshes.map((mesh, block) =>
    fieldOn(mesh, gases, (x, y, i, j) => start(x, y, block, i, j), work.rooms[block]!),
  );
  for (const [i, { sides }] of blocks.entries()) markWalls(fields[i]!, sides);
  const ghosts = blocks.map(({ sides }, b) => ghostFill(fields, b, sides, gases));
  const marks = blocks.map(({ sides }, b) => markFill(fields, b, sides));
  const parts = work.on(fields);
  const state = { time: 0, steps: 0, rescued: 0 };
  /** Steps for which some cell may go without slopes. */
  let someBlurred = 0;

  function look(): void {
    for (const fill of ghosts) fill();
    parts.markShocks();
    for (const fill of marks) fill();
  }

  function attemptStep(flat: boolean, renew: boolean): Problem | null {
    for (const which of [0, 1] as const) {
      look();
      const broken = parts.stage(which, flat);
      if (broken !== null) return broken;
    }
    const broken = parts.settle(renew);
    if (broken === null) mendCorners(fields, corners, gases);
    return broken;
  }

  /** Tried again without slopes where it broke, then without slopes anywhere. */
  function take(blurred: boolean, renew: boolean): void {
    parts.keep();
    for (let tried = 0; ; tried++) {
      const broken = attemptStep(blurred || tried === TRIES, renew || tried > 0);
      if (broken === null) {
        if (tried > 0) state.rescued += 1;
        break;
      }
      parts.restore();
      someBlurred = BLURRED_STEPS;
      if (blurred || tried === TRIES) throw new ProblemError(broken);
    }
    if (someBlurred > 0) for (const field of fields) lessBlurred(field);
    someBlurred -= 1;
    state.steps += 1;
  }

  return {
    setup,
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
    stableStep: (courant) => courant * Math.min(...parts.shortest()),
    step(seconds) {
      parts.sameSteps(seconds);
      take(false, true);
      state.time += seconds;
    },
    through(block, part) {
      look();
      return sideFlow(fields[block]!, part);
    },
    relax(courant, blurred = false) {
      parts.ownSteps(courant, spread);
      take(blurred, state.steps % RENEWED === 0);
    },
  };
}
