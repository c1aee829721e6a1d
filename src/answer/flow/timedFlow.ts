/** The whole flow of an engine through time: it starts, stops, throttles, or its gas takes the second part of a dual bell. */

import { ProblemError } from '../../numerics/problem.ts';
import { flowKernel } from '../../physics/euler/index.ts';
import {
  averagesFor,
  type BlockFlow,
  type ChamberLevel,
  inTime,
  type RoundCase,
  settle,
} from '../../physics/wholeFlow/index.ts';
import { contourAt } from '../plume.ts';
import type { EngineSolution } from '../solution.ts';
import { fieldOf } from './fieldOf.ts';
import { caseAt } from './flowCase.ts';
import { ACROSS, levelsTo, STEPS, STILL } from './flowFields.ts';
import type { Fineness, FlowBits, FlowField } from './model.ts';
import type { FlowPlace } from './places.ts';
import { type Run, type Running, runOf } from './running.ts';

export type FlowEvent =
  /** From air at rest, or to almost none: the chamber’s pressure from or to that of the air. */
  | { readonly is: 'start' | 'stop' }
  /** Chamber pressure to a share of the full one. */
  | { readonly is: 'throttle'; readonly to: number }
  /** Of a dual bell: the gas that left the wall where it bends finds the rest of the wall again. */
  | { readonly is: 'switch' };

export interface TimedChoices {
  readonly event: FlowEvent;
  /** [s] in which the chamber’s pressure goes, in a straight line */ readonly ramp: number;
  /** [s] of the whole */ readonly until: number;
  /** Frames behind the first, evenly apart. */ readonly frames: number;
  readonly fineness: Fineness;
  readonly bits: FlowBits;
}

/** The air’s pressure, just a little above: what a chamber has without gas of its own. */
const UNLIT = 1.001;

/** The first frame is how it begins. @throws ProblemError where the event is none of this engine, or the field breaks */
export function* timedFields(
  solution: EngineSolution,
  place: FlowPlace,
  { event, ramp, until, frames, fineness, bits }: TimedChoices,
): Generator<FlowField> {
  const kernel = bits === 'reference' ? null : flowKernel(bits);
  const contour = event.is === 'switch' ? solution.contour : contourAt(solution, place.ambientPressure);
  const run = runOf(solution, contour, kernel);
  const at = caseAt(solution, contour, place);
  const low = (UNLIT * at.round.air.pressure) / solution.expansion.chamber.pressure;
  const level: ChamberLevel = { share: event.is === 'start' ? low : 1 };
  const begins: RoundCase = event.is === 'switch' ? { ...at.round, leavesAt: bendOf(solution) } : at.round;
  const from = event.is === 'start' ? null : settledBlocks(run, begins, fineness);
  const goes: RoundCase = {
    ...(event.is === 'switch' ? { ...at.round, leavesAt: null } : at.round),
    level,
    unlit: event.is === 'start',
  };
  const running = run(goes, ACROSS.coarse, ACROSS[fineness], from);
  const target = event.is === 'throttle' ? event.to : event.is === 'stop' ? low : 1;
  const first = level.share;
  const setLevel = (time: number): void => {
    level.share = first + (target - first) * Math.min(1, time / ramp);
  };
  const told = (): FlowField =>
    frameOf(solution, place, at, goes, running, fineness, kernel?.bits ?? 'reference', event, level.share);
  yield told();
  const times = Array.from({ length: frames }, (_, k) => ((k + 1) * until) / frames);
  for (const _time of inTime(running.flow, times, setLevel)) yield told();
}

function settledBlocks(run: Run, which: RoundCase, fineness: Fineness): readonly BlockFlow[] {
  let from: readonly BlockFlow[] | null = null;
  for (const level of levelsTo(fineness)) {
    const running = run(which, ACROSS.coarse, ACROSS[level], from);
    const [least, most] = from === null ? STEPS.cold : STEPS.finer;
    const longest = Math.round(most * running.slow);
    const settled = settle(running.flow, { least, most: longest, watch: running.watch, still: STILL });
    from = settled.averages.blocks();
  }
  return from!;
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

function frameOf(
  solution: EngineSolution,
  place: FlowPlace,
  at: ReturnType<typeof caseAt>,
  round: RoundCase,
  running: Running,
  fineness: Fineness,
  kernel: FlowBits,
  event: FlowEvent,
  chamber: number,
): FlowField {
  const [thrust] = running.watch();
  const { flow } = running;
  const field = fieldOf(solution, place, { ...at, round }, fineness, {
    running,
    kernel,
    settled: {
      steps: flow.steps,
      watched: [{ mean: thrust, swing: 0 }],
      steady: true,
      averages: averagesFor(flow),
      broke: 0,
    },
  });
  return {
    ...field,
    moment: { event: event.is, time: flow.time, chamber, massFlow: running.massFlow(), thrust },
  };
}
