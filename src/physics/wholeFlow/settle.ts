/** A field brought to rest, each cell by its own steps; what never comes to rest is averaged. */

import { attempt, type Problem, ProblemError } from '../../numerics/problem.ts';
import { type Flow, type GpuFlow, isThreadLost } from '../euler/index.ts';
import { type Averages, averagesFor } from './averages.ts';

export interface SettleOptions {
  /** Steps at least and at most. */ readonly least: number;
  readonly most: number;
  /** What is watched until it stands; what `still` has a bound for must. */ readonly watch: (
    flow: Flow,
  ) => readonly number[];
  /** Largest departure of each from its mean over the last stretches, relative. */ readonly still: readonly number[];
}

export interface Settled {
  readonly steps: number;
  /** Mean of what was watched over the last stretches, and the largest departure from it there, relative. */
  readonly watched: readonly { readonly mean: number; readonly swing: number }[];
  /** Whether all stood still before the steps ran out. */ readonly steady: boolean;
  /** Between the first and the last of the looks that agree; of a flow that is not steady over the last half of the steps. */
  readonly averages: Averages;
  /** How often the field broke and went on with shorter steps, at first order for a while. */ readonly broke: number;
}

/** The field goes on breaking, at first order and in ever shorter steps. */
export class NotSettled extends ProblemError {
  /** The last that held: not at rest, and no mean. */ readonly last: Settled;
  constructor(problem: Problem, last: Settled) {
    super(problem);
    this.last = last;
  }
}

/** Steps between two looks, and between two fields of the mean. */
const STRETCH = 50;
const SAMPLE = 10;
/** Looks that must agree. */
const ALIKE = 4;
/** Share of the longest stable step. */
const COURANT = 0.6;
/** Steps at first order after the field broke, and how often it may break. */
const BLURRED = 40;
const MOST_BREAKS = 12;

/** @throws NotSettled where the field goes on breaking, and ProblemError where a thread is lost */
export function settle(flow: Flow, options: SettleOptions): Settled {
  const work = settling(flow, options);
  let asked = work.next();
  while (asked.done !== true) {
    const { courant, blurred } = asked.value;
    const taken = attempt(() => flow.relax(courant, blurred));
    if (!taken.ok && isThreadLost(taken.problem)) throw new ProblemError(taken.problem);
    asked = work.next(taken.ok ? { steps: 1, problem: null } : { steps: 0, problem: taken.problem });
  }
  return asked.value;
}

/** The same on a graphics processor that has taken the flow on. @throws NotSettled, and ProblemError where the processor is lost */
export async function settleOn(gpu: GpuFlow, flow: Flow, options: SettleOptions): Promise<Settled> {
  const work = settling(flow, options);
  let asked = work.next();
  while (asked.done !== true) {
    const { courant, blurred, atMost } = asked.value;
    const before = gpu.steps;
    let problem: Problem | null = null;
    try {
      await gpu.relax(courant, atMost, blurred);
    } catch (error) {
      if (!(error instanceof ProblemError) || error.problem.code !== 'field-broke') throw error;
      problem = error.problem;
    }
    asked = work.next({ steps: gpu.steps - before, problem });
  }
  return asked.value;
}

/** Steps to be taken, one or more of them, all alike. */
interface Asked {
  readonly courant: number;
  readonly blurred: boolean;
  readonly atMost: number;
}

/** How many were taken, and what broke the next. */
interface Taken {
  readonly steps: number;
  readonly problem: Problem | null;
}

function* settling(
  flow: Flow,
  { least, most, watch, still }: SettleOptions,
): Generator<Asked, Settled, Taken> {
  const seen: (readonly number[])[] = [];
  // Of a flow on its way the mean over each of the last stretches: how many of them are told turns out at the end.
  let stretches: readonly Averages[] = [];
  let now = averagesFor(flow);
  let lastHalf = averagesFor(flow);
  let [courant, broke, blurredTo] = [COURANT, 0, 0];
  let steady = false;
  let n = 0;
  while (n < most) {
    const blurred = n < blurredTo;
    const until = Math.min(most, blurred ? blurredTo : most, n - (n % SAMPLE) + SAMPLE);
    const taken: Taken = yield { courant, blurred, atMost: until - n };
    n += taken.steps;
    if (taken.problem !== null) {
      broke += 1;
      if (broke > MOST_BREAKS) {
        const [watched, averages] = [swings([watch(flow)]), averagesFor(flow)];
        throw new NotSettled(taken.problem, {
          steps: n,
          watched,
          steady: false,
          averages,
          broke: MOST_BREAKS,
        });
      }
      courant /= 2;
      blurredTo = n + BLURRED;
      continue;
    }
    if (n % SAMPLE === 0) now.add();
    if (n % STRETCH !== 0) continue;
    stretches = [...stretches, now].slice(1 - ALIKE);
    lastHalf.addAll(now);
    now = averagesFor(flow);
    courant = Math.min(COURANT, 1.5 * courant);
    seen.push(watch(flow));
    const last = swings(seen.slice(-ALIKE));
    steady = n >= least && seen.length >= ALIKE && still.every((bound, k) => last[k]!.swing < bound);
    if (steady) break;
    if (n === STRETCH * Math.floor(most / 2 / STRETCH)) lastHalf = averagesFor(flow);
  }
  const watched = swings(steady ? seen.slice(-ALIKE) : seen.slice(Math.floor(seen.length / 2)));
  return { steps: n, watched, steady, averages: steady ? together(flow, stretches) : lastHalf, broke };
}

function together(flow: Flow, parts: readonly Averages[]): Averages {
  const whole = averagesFor(flow);
  for (const part of parts) whole.addAll(part);
  return whole;
}

function swings(
  seen: readonly (readonly number[])[],
): readonly { readonly mean: number; readonly swing: number }[] {
  return (seen[0] ?? []).map((_, k) => {
    const values = seen.map((each) => each[k]!);
    const mean = values.reduce((a, b) => a + b, 0) / values.length;
    return { mean, swing: mean === 0 ? 0 : Math.max(...values.map((value) => Math.abs(value / mean - 1))) };
  });
}
