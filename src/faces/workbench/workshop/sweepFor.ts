/** A sweep that the page asks for, and what it may be over. */

import type { Crew } from '../../../answer/asked/crew.ts';
import { settableConditions, settableInputs } from '../../../answer/inputs/index.ts';
import { type Sweep, type SweepRequest, sweep, sweepRequestOf } from '../../../answer/sweeps/index.ts';
import { type Outcome, ProblemError } from '../../../numerics/problem.ts';
import type { Study } from '../../../study/model.ts';
import type { Asked, SweepChoice, SweepSoFar } from './deskMessages.ts';

/** Surroundings and throttle first, then the inputs of this engine. */
export function sweepChoices(study: Study, engine: string): readonly SweepChoice[] {
  const input = study.engines.find(({ id }) => id === engine);
  const all = [...settableConditions, ...(input === undefined ? [] : settableInputs(input))];
  return all.map(({ name, label, quantity, sweep: range }) => ({ name, label, quantity, range }));
}

/** @param tell how far it has come, each time that it has become finer */
export async function sweepFor(
  study: Study,
  crew: Crew,
  asked: Asked<'sweep'>,
  signal: AbortSignal,
  tell: (found: SweepSoFar) => void,
): Promise<Outcome<Sweep>> {
  const request = requestOf(study, asked);
  let soFar: SweepSoFar = { sweep: null, done: 0, most: request.points };
  const update = (change: Partial<SweepSoFar>): void => {
    soFar = { ...soFar, ...change };
    tell(soFar);
  };
  try {
    const value = await sweep(study, crew, request, {
      signal,
      onProgress: (done, most) => update({ done, most }),
      onUpdate: (found) => update({ sweep: found }),
    });
    return { ok: true, value };
  } catch (error) {
    if (error instanceof ProblemError) return { ok: false, problem: error.problem };
    throw error;
  }
}

function requestOf(study: Study, asked: Asked<'sweep'>): SweepRequest {
  if ('request' in asked) return asked.request;
  const own = study.sweeps.find(({ id }) => id === asked.id);
  if (own === undefined) throw new RangeError(`the study has no sweep ${asked.id}`);
  return sweepRequestOf(study, own);
}
