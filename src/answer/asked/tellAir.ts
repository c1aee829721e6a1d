/** One number of the standard air. */

import { attempt, type Outcome, ProblemError } from '../../numerics/problem.ts';
import { type Air, airAtGeometricAltitude } from '../../physics/air/index.ts';
import { findQuantity } from '../catalogue.ts';
import { askProblem } from './askProblem.ts';
import type { Ask, Told } from './model.ts';
import { altitudeOf } from './surroundings.ts';

const readers: Readonly<Record<string, (air: Air) => number | null>> = {
  'air.pressure': (air) => air.pressure,
  'air.temperature': (air) => air.temperature,
  'air.density': (air) => air.density,
  'air.soundSpeed': (air) => air.soundSpeed,
  'air.gravity': (air) => air.gravity,
  'air.geopotentialAltitude': (air) => air.altitudeGeopotential,
};

/** Names in the catalogue that {@link tellAir} knows. */
export const toldOfAir: readonly string[] = Object.keys(readers);

/** What is asked of the air at an altitude, or where it has a pressure; it belongs to no engine. */
export function tellAir(ask: Ask): Told {
  const entry = findQuantity(ask.quantity);
  const reader = Object.hasOwn(readers, ask.quantity) ? readers[ask.quantity] : undefined;
  if (entry === undefined || reader === undefined) {
    return {
      ok: false,
      problem: {
        code: 'quantity-unknown',
        what: `“${ask.quantity}” is no quantity of the air.`,
        mend: `The air has ${toldOfAir.join(', ')}.`,
      },
    };
  }
  const wrong = askProblem(entry, ask);
  if (wrong !== null) return { ok: false, problem: wrong };
  const outcome: Outcome<number> = attempt(
    () => reader(airAtGeometricAltitude(altitudeOf(ask.ambient!))) ?? noSound(),
  );
  return outcome.ok ? { ok: true, value: outcome.value, scatter: [], alternatives: [] } : outcome;
}

function noSound(): never {
  throw new ProblemError({
    code: 'no-value',
    what: 'Above 86 km the standard air has no speed of sound.',
    mend: 'Ask at a lower altitude.',
    where: 'air.soundSpeed',
  });
}
