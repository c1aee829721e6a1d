import { ProblemError } from '../../numerics/problem.ts';

/** There is no such number, for a reason that the answer gives. */
export function noFigure(why: string, mend: string): never {
  throw new ProblemError({ code: 'no-value', what: why, mend });
}
