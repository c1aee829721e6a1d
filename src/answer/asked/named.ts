import { ProblemError } from '../../numerics/problem.ts';
import { nearestName } from '../../study/nearest.ts';
import { listed } from '../compare/speech.ts';
import type { Asked } from './reader.ts';

const MOST_LISTED = 12;

/** The one of several that is asked for by one of its names; spelling must be right, capitals need not. */
export function namedOne<T>(
  { part, quantity }: Asked,
  what: string,
  all: readonly T[],
  namesOf: (one: T) => readonly string[],
): T {
  const wanted = (part ?? '').trim().toLowerCase();
  const found = all.find((one) => namesOf(one).some((name) => name.toLowerCase() === wanted));
  if (found !== undefined) return found;
  const names = all.map((one) => namesOf(one)[0]!);
  const near = nearestName(wanted, all.flatMap(namesOf));
  const few = names.slice(0, MOST_LISTED);
  throw new ProblemError({
    code: 'part-unknown',
    what: `There is no ${what} “${part ?? ''}” here.`,
    ...(near !== null && { why: `Did you mean ${near}?` }),
    mend:
      few.length === 0
        ? `This engine has none: ask another engine, or another quantity.`
        : `There are ${listed(few)}${names.length > few.length ? ' and more' : ''}.`,
    where: quantity,
  });
}
