/** A sweep or a map that the page asks for, and what it may be over. */

import type { Crew } from '../../../answer/asked/crew.ts';
import { settableConditions, settableInputs } from '../../../answer/inputs/index.ts';
import {
  type MapRequest,
  mapRequestOf,
  type SweepRequest,
  sweep,
  sweepMap,
  sweepRequestOf,
} from '../../../answer/sweeps/index.ts';
import { type Outcome, ProblemError } from '../../../numerics/problem.ts';
import type { Study } from '../../../study/model.ts';
import { ownersOf } from '../../../study/owners.ts';
import type { Asked, SweepChoice, SweepSoFar, SweptFound } from './deskMessages.ts';

/** Surroundings, throttle and time first, then the inputs of this engine or vehicle. */
export function sweepChoices(study: Study, owner: string): readonly SweepChoice[] {
  const input = ownersOf(study).find(({ id }) => id === owner);
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
): Promise<Outcome<SweptFound>> {
  let soFar: SweepSoFar = { found: null, done: 0, most: 0 };
  const update = (change: Partial<SweepSoFar>): void => {
    soFar = { ...soFar, ...change };
    tell(soFar);
  };
  const options = {
    signal,
    onProgress: (done: number, most: number) => update({ done, most }),
    onUpdate: (found: SweptFound) => update({ found }),
  };
  try {
    const map = mapRequested(study, asked);
    const value =
      map === null
        ? await sweep(study, crew, sweepRequested(study, asked), options)
        : await sweepMap(study, crew, map, options);
    return { ok: true, value };
  } catch (error) {
    if (error instanceof ProblemError) return { ok: false, problem: error.problem };
    throw error;
  }
}

/** Null where no map is asked for. */
function mapRequested(study: Study, asked: Asked<'sweep'>): MapRequest | null {
  if ('mapRequest' in asked) return asked.mapRequest;
  if (!('mapId' in asked)) return null;
  const own = study.maps.find(({ id }) => id === asked.mapId);
  if (own === undefined) throw new RangeError(`the study has no map ${asked.mapId}`);
  return mapRequestOf(study, own);
}

function sweepRequested(study: Study, asked: Asked<'sweep'>): SweepRequest {
  if ('request' in asked) return asked.request;
  const own = 'id' in asked ? study.sweeps.find(({ id }) => id === asked.id) : undefined;
  if (own === undefined) throw new RangeError('the study has no such sweep');
  return sweepRequestOf(study, own);
}
