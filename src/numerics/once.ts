/** What is found when first asked for, and kept. */

import { attempt, ProblemError } from './problem.ts';

/** The value of `find`, found when first asked for and kept. */
export function once<T>(find: () => T): () => T {
  let found: { readonly value: T } | null = null;
  return () => {
    found ??= { value: find() };
    return found.value;
  };
}

/** The same, and its problem is kept as well: once found, it is not looked for again. @throws ProblemError */
export function onceOrProblem<T>(find: () => T): () => T {
  const found = once(() => attempt(find));
  return () => {
    const outcome = found();
    if (!outcome.ok) throw new ProblemError(outcome.problem);
    return outcome.value;
  };
}
