/** One number of one solved engine, with what is known of its error. */

import { attempt, type Problem } from '../../numerics/problem.ts';
import { findQuantity } from '../catalogue.ts';
import type { EngineSolution } from '../solution.ts';
import { askProblem } from './askProblem.ts';
import { changeReaders } from './changeReaders.ts';
import { conditionReaders } from './conditionReaders.ts';
import { cycleReaders } from './cycleReaders.ts';
import { engineReaders } from './engineReaders.ts';
import { heatReaders } from './heatReaders.ts';
import { inputReaders } from './inputReaders.ts';
import { lossReaders } from './lossReaders.ts';
import type { Ask, Told } from './model.ts';
import { pintleReaders } from './pintleReaders.ts';
import { plugReaders } from './plugReaders.ts';
import { plumeReaders } from './plumeReaders.ts';
import type { Readers } from './reader.ts';
import { separationReaders } from './separationReaders.ts';
import { surroundingsOf } from './surroundings.ts';
import { thrustReaders } from './thrustReaders.ts';
import { wallReaders } from './wallReaders.ts';

const readers: Readers = {
  ...engineReaders,
  ...thrustReaders,
  ...conditionReaders,
  ...separationReaders,
  ...wallReaders,
  ...plumeReaders,
  ...plugReaders,
  ...pintleReaders,
  ...lossReaders,
  ...changeReaders,
  ...heatReaders,
  ...cycleReaders,
  ...inputReaders,
};

/** Names in the catalogue that {@link tell} reads off an engine. */
export const toldOfAnEngine: readonly string[] = Object.keys(readers);

/**
 * What is asked of a solved engine: the number by its exact name in the catalogue, its published scatter and, where models
 * stand beside each other, what each of them says. Nothing else is worked out: a thrust costs no parts, no plume, no second mode.
 *
 * `throttle` and `inputs` of the ask are not read: whoever asks hands in an engine that was solved with them (the throttled one
 * at the lower chamber pressure, with the same throat). Nor is `engine`.
 */
export function tell(solution: EngineSolution, ask: Ask): Told {
  const entry = findQuantity(ask.quantity);
  if (entry === undefined) return { ok: false, problem: unknown(ask.quantity) };
  const wrong = askProblem(entry, ask);
  if (wrong !== null) return { ok: false, problem: wrong };
  if (entry.place === 'vehicle') return { ok: false, problem: ofVehicle(entry.label) };
  const reader = Object.hasOwn(readers, entry.name) ? readers[entry.name] : undefined;
  if (reader === undefined) throw new Error(`No reader of ${entry.name}`);
  const outcome = attempt(() =>
    reader({
      solution,
      quantity: entry.name,
      around: surroundingsOf(ask.ambient ?? { kind: 'vacuum' }),
      station: ask.station ?? { kind: 'lip' },
      part: ask.part ?? null,
      ask,
    }),
  );
  if (!outcome.ok) return outcome;
  const read = typeof outcome.value === 'number' ? { value: outcome.value } : outcome.value;
  return { ok: true, value: read.value, scatter: read.scatter ?? [], alternatives: read.alternatives ?? [] };
}

function ofVehicle(label: string): Problem {
  return {
    code: 'engine-is-no-vehicle',
    what: `${label.charAt(0).toUpperCase()}${label.slice(1)} belongs to a vehicle; an engine was asked.`,
    mend: 'Ask a vehicle of the study, e.g. booster.payload.',
  };
}

function unknown(name: string): Problem {
  return {
    code: 'quantity-unknown',
    what: `There is no quantity “${name}”.`,
    mend: 'plumeline quantities lists them all.',
  };
}
