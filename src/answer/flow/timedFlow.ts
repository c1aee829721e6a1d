/** The whole flow of an engine through time: it starts, stops, throttles, or its gas takes the second part of a dual bell. */

import { attempt, ProblemError } from '../../numerics/problem.ts';
import { flowKernel, isThreadLost, type StepTeam } from '../../physics/euler/index.ts';
import {
  averagesFor,
  type BlockFlow,
  type ChamberLevel,
  feedOf,
  inletPressureOf,
  inTime,
  type RoundCase,
  settle,
} from '../../physics/wholeFlow/index.ts';
import { contourAt } from '../plume.ts';
import type { EngineSolution } from '../solution.ts';
import { fieldOf } from './fieldOf.ts';
import { type CaseAt, caseAt } from './flowCase.ts';
import { ACROSS, levelsTo, STEPS, STILL } from './flowFields.ts';
import type { Fineness, FlowBits, FlowField, FlowMoment } from './model.ts';
import type { FlowPlace } from './places.ts';
import { type Run, type Running, runOf } from './running.ts';

export type FlowEvent =
  /** From air at rest, or to none. */
  | { readonly is: 'start' | 'stop' }
  /** To a share of the full feed. */
  | { readonly is: 'throttle'; readonly to: number }
  /** Of a dual bell: the gas that left the wall where it bends finds the rest of the wall again. */
  | { readonly is: 'switch' };

export interface TimedChoices {
  readonly event: FlowEvent;
  /** [s] in which the feed goes, in a straight line */ readonly ramp: number;
  /** [s] of the whole */ readonly until: number;
  /** Frames behind the first, evenly apart. */ readonly frames: number;
  readonly fineness: Fineness;
  readonly bits: FlowBits;
  /** Threads that help to find the flow at rest that it begins from; the numbers are the same. */ readonly team?: StepTeam | null;
}

/**
 * The first frame is how it begins. Where the field breaks on its way the last that held is told, and why it ended.
 * @param through how the flow goes from moment to moment
 * @throws ProblemError where the event is none of this engine, no field at rest is found to begin from, or a thread is lost
 */
export function* timedFields(
  solution: EngineSolution,
  place: FlowPlace,
  { event, ramp, until, frames, fineness, bits, team = null }: TimedChoices,
  through: typeof inTime = inTime,
): Generator<FlowField> {
  const kernel = bits === 'reference' ? null : flowKernel(bits, team);
  const contour = event.is === 'switch' ? solution.contour : contourAt(solution, place.ambientPressure);
  const run = runOf(solution, contour, kernel);
  const at = caseAt(solution, contour, place);
  const whole: RoundCase = { ...at.round, timed: true };
  const begins = event.is === 'switch' ? { ...whole, leavesAt: bendOf(solution) } : whole;
  const rest = atRest(run, begins, fineness);
  const first = event.is === 'start' ? 0 : 1;
  const target = event.is === 'throttle' ? event.to : event.is === 'stop' ? 0 : 1;
  const level: ChamberLevel = { share: first, full: feedOf(rest.flow) };
  const full = inletPressureOf(rest.flow);
  const goes: RoundCase = {
    ...(event.is === 'switch' ? { ...whole, leavesAt: null } : whole),
    level,
    unlit: event.is === 'start',
  };
  const running = run(goes, ACROSS.coarse, ACROSS[fineness], event.is === 'start' ? null : rest.blocks);
  const told = (): FlowField & { readonly moment: FlowMoment } => ({
    ...withoutModels(
      fieldNow(solution, place, { ...at, round: goes }, running, fineness, kernel?.bits ?? 'reference'),
    ),
    moment: {
      event: event.is,
      time: running.flow.time,
      asked: level.share,
      fed: feedOf(running.flow) / level.full,
      chamber: inletPressureOf(running.flow) / full,
      massFlow: running.massFlow(),
      thrust: running.watch()[0],
    },
  });
  yield told();
  const times = Array.from({ length: frames }, (_, k) => ((k + 1) * until) / frames);
  const feed = (time: number): void => {
    level.share = first + (target - first) * Math.min(1, time / ramp);
  };
  const moments = through(running.flow, times, feed);
  for (;;) {
    const next = attempt(() => moments.next());
    if (!next.ok) {
      if (isThreadLost(next.problem)) throw new ProblemError(next.problem);
      const last = told();
      yield { ...last, moment: { ...last.moment, ended: next.problem } };
      return;
    }
    if (next.value.done === true) return;
    feed(next.value.value);
    yield told();
  }
}

/** Laws, criteria and the model of the nozzle are those of the full engine at rest: none of them is told of a moment. */
export function withoutModels(field: FlowField): FlowField {
  return {
    ...field,
    thrustCoefficient: { ...field.thrustCoefficient, byModel: null },
    against: null,
    byLaw: { machDisk: null, cellLength: null },
    firstCell: null,
    separation: null,
  };
}

interface AtRest {
  readonly flow: Running['flow'];
  readonly blocks: readonly BlockFlow[];
}

function atRest(run: Run, which: RoundCase, fineness: Fineness): AtRest {
  let found: AtRest | null = null;
  for (const level of levelsTo(fineness)) {
    const running = run(which, ACROSS.coarse, ACROSS[level], found?.blocks ?? null);
    const [least, most] = found === null ? STEPS.cold : STEPS.finer;
    const longest = Math.round(most * running.slow);
    const settled = settle(running.flow, { least, most: longest, watch: running.watch, still: STILL });
    found = { flow: running.flow, blocks: settled.averages.blocks() };
  }
  return found!;
}

/** [m] from the throat where a dual bell bends. */
function bendOf({ nozzle, positions, input }: EngineSolution): number {
  const [thick] = positions;
  if (nozzle.spec.kind === 'dualBell' && thick !== undefined) return thick.contour.wall.at(-1)!.axial;
  throw new ProblemError({
    code: 'flow-no-switch',
    what: `${input.name} has no second part of a bell that its gas could take.`,
    mend: 'Ask for a switch of a dual bell, or for start, stop or throttle.',
  });
}

function fieldNow(
  solution: EngineSolution,
  place: FlowPlace,
  at: CaseAt,
  running: Running,
  fineness: Fineness,
  kernel: FlowBits,
): FlowField {
  const { flow } = running;
  const watched = [{ mean: running.watch()[0], swing: 0 }];
  const settled = { steps: flow.steps, watched, steady: true, averages: averagesFor(flow), broke: 0 };
  return fieldOf(solution, place, at, fineness, { running, kernel, settled });
}
