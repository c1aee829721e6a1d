/** The whole flow of one engine at one place after the other, each the beginning of the next. */

import { type Problem, ProblemError } from '../../numerics/problem.ts';
import { type FlowKernel, flowKernel, gpuFlow, type StepTeam } from '../../physics/euler/index.ts';
import type { Contour } from '../../physics/nozzle/index.ts';
import {
  beginningOf,
  NotSettled,
  type Settled,
  type SettleOptions,
  settle,
  settleOn,
} from '../../physics/wholeFlow/index.ts';
import { contourAt } from '../plume.ts';
import type { EngineSolution } from '../solution.ts';
import { fieldOf } from './fieldOf.ts';
import { type CaseAt, caseAt } from './flowCase.ts';
import { FINENESSES, type Fineness, type FlowBits, type FlowField } from './model.ts';
import type { FlowPlace } from './places.ts';
import { type Run, type Running, runOf } from './running.ts';

/** Cells from the axis to the wall; each finer mesh begins from the one before. */
export const ACROSS: Readonly<Record<Fineness, number>> = {
  coarse: 8,
  normal: 16,
  fine: 32,
  finest: 64,
};
/** Steps at least and at most: from nothing, from the neighbour, from the coarser mesh. */
export const STEPS = { cold: [600, 1600], warm: [400, 1200], finer: [300, 1000] } as const;
/** Thrust stands within 0.1 %, the mean pressure on the jet’s axis (or on a base) and what a jet fills within 2 %. */
export const STILL = [1e-3, 2e-2, Infinity, Infinity, 2e-2] as const;
/** A field that does not come to its end; what it was when it held for the last time. */
export class FlowBroke extends ProblemError {
  readonly last: FlowField;
  constructor(problem: Problem, last: FlowField) {
    super(problem);
    this.last = { ...last, ended: problem };
  }
}

/** One field of an engine. @throws FlowBroke */
export type FlowSolver = (
  place: FlowPlace,
  fineness: Fineness,
  /** The neighbour’s field as coarse, or that of this place one step less fine; null: from nothing, as coarse. */
  from: FlowField | null,
) => FlowField;

/** What is the same in all fields of an engine is found once. @param team threads that help; the numbers are the same */
export function flowSolver(
  solution: EngineSolution,
  bits: FlowBits = 32,
  team: StepTeam | null = null,
): FlowSolver {
  const kernel = bits === 'reference' ? null : flowKernel(bits, team);
  const begin = beginner(solution, kernel);
  return (place, fineness, from) => {
    const { which, running, options } = begin(place, fineness, from);
    const told = (settled: Settled): FlowField =>
      fieldOf(solution, place, which, fineness, { running, settled, kernel: kernel?.bits ?? 'reference' });
    try {
      return told(settle(running.flow, options));
    } catch (error) {
      if (error instanceof NotSettled) throw new FlowBroke(error.problem, told(error.last));
      throw error;
    }
  };
}

/** The same on a graphics processor that is handed in. @throws ProblemError as well where it is lost */
export type GpuFlowSolver = (...asked: Parameters<FlowSolver>) => Promise<FlowField>;

export function gpuFlowSolver(solution: EngineSolution, device: GPUDevice): GpuFlowSolver {
  // Where it stands between two looks, thrust and means are found by the kernel’s own field.
  const begin = beginner(solution, flowKernel(32));
  return async (place, fineness, from) => {
    const { which, running, options } = begin(place, fineness, from);
    const gpu = await gpuFlow(device, running.flow);
    try {
      const settled = await settleOn(gpu, running.flow, options);
      const { rescued } = gpu;
      return fieldOf(solution, place, which, fineness, {
        running,
        settled,
        kernel: 'graphics processor',
        rescued,
      });
    } finally {
      gpu.destroy();
    }
  };
}

interface Begun {
  readonly which: CaseAt;
  readonly running: Running;
  readonly options: SettleOptions;
}

/** Lays fields out, ready to be settled. */
function beginner(
  solution: EngineSolution,
  kernel: FlowKernel | null,
): (...asked: Parameters<FlowSolver>) => Begun {
  const runs = new Map<Contour, Run>();
  return (place, fineness, from) => {
    const contour = contourAt(solution, place.ambientPressure);
    const run = runs.get(contour) ?? runOf(solution, contour, kernel);
    runs.set(contour, run);
    const which = caseAt(solution, contour, place);
    const mode = solution.nozzle.at(place.ambientPressure).mode ?? null;
    // Behind another wall, or flown through faster or slower, the gas begins anew.
    const isAlike = from?.mode === mode && from.flightSpeed === (place.flightSpeed ?? 0);
    const begun = isAlike ? from : null;
    const [least, most] =
      begun === null ? STEPS.cold : begun.fineness === fineness ? STEPS.warm : STEPS.finer;
    const beginning = begun === null ? null : beginningOf(begun.blocks);
    const running = run(which.round, ACROSS.coarse, ACROSS[fineness], beginning);
    const longest = Math.round(most * running.slow);
    return { which, running, options: { least, most: longest, watch: running.watch, still: STILL } };
  };
}

/**
 * Field after field; the coarse one of each place begins from that of the place before, each finer one from its own coarser one.
 * @throws ProblemError where no mesh follows the engine’s walls, or the field breaks
 */
export function* flowFields(
  solution: EngineSolution,
  places: readonly FlowPlace[],
  fineness: Fineness,
  bits: FlowBits = 32,
): Generator<FlowField> {
  const solve = flowSolver(solution, bits);
  let before: FlowField | null = null;
  for (const place of places) {
    let field: FlowField | null = null;
    for (const level of levelsTo(fineness)) {
      field = solve(place, level, field ?? before);
      if (level === 'coarse') before = field;
    }
    if (field !== null) yield field;
  }
}

/** From the coarsest on. */
export function levelsTo(fineness: Fineness): readonly Fineness[] {
  return FINENESSES.slice(0, FINENESSES.indexOf(fineness) + 1);
}
