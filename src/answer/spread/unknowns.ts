/** The inputs of a study that are not known exactly, as far as the asked engines hang on them. */

import { ProblemError } from '../../numerics/problem.ts';
import { MOST_SOBOL_DIMENSIONS } from '../../numerics/sobol.ts';
import type { Study } from '../../study/model.ts';
import { type Owner, ownersOf } from '../../study/owners.ts';
import type { Ask } from '../asked/model.ts';
import { ownersAsked } from '../asked/ownersAsked.ts';
import { settableInputs } from '../inputs/index.ts';
import { statedQuantities } from '../statedQuantities.ts';
import { type Distribution, distributionOf } from './distribution.ts';
import type { Unknown } from './model.ts';

export interface UnknownInput {
  readonly unknown: Extract<Unknown, { kind: 'input' }>;
  readonly distribution: Distribution;
}

/** @throws ProblemError `too-many-unknowns` */
export function unknownInputs(study: Study, asks: readonly Ask[]): readonly UnknownInput[] {
  const found = new Map<string, UnknownInput>();
  for (const engine of askedOwners(study, asks)) {
    const allowed = new Map(settableInputs(engine).map((entry) => [entry.path, entry]));
    for (const quantity of statedQuantities(engine)) {
      if (found.has(quantity.path)) continue;
      const entry = allowed.get(quantity.path);
      const distribution = distributionOf(quantity, {
        lowest: entry?.lowest ?? null,
        highest: entry?.highest ?? null,
      });
      if (distribution === null) continue;
      const { path, value, text } = quantity;
      const { low, high } = distribution;
      found.set(path, { unknown: { kind: 'input', path, middle: value, low, high, text }, distribution });
    }
  }
  if (found.size > MOST_INPUTS) throw tooManyUnknowns(found.size, MOST_INPUTS);
  return [...found.values()];
}

/** Inputs alone, or together with the errors of the models. */
export function tooManyUnknowns(found: number, most: number): ProblemError {
  return new ProblemError({
    code: 'too-many-unknowns',
    what: `${found} inputs and errors of models are not known exactly; ${most} at most can be carried through.`,
    mend: 'State the inputs that matter least as exact values.',
  });
}

/** Room is left for the errors of the models. */
const MOST_INPUTS = MOST_SOBOL_DIMENSIONS / 2;

function askedOwners(study: Study, asks: readonly Ask[]): readonly Owner[] {
  const wanted = ownersAsked(asks, study);
  return ownersOf(study).filter(({ id }) => wanted.has(id));
}
