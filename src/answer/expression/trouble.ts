/** How a text is refused: thrown inside this folder, caught at its door, never seen outside. */

import type { ExpressionProblem } from './model.ts';
import type { Span } from './tree.ts';

export class Trouble extends Error {
  readonly problem: ExpressionProblem;
  constructor(problem: ExpressionProblem) {
    super(problem.what);
    this.name = 'Trouble';
    this.problem = problem;
  }
}

/** Refuse the part of the text at `span`. */
export function refuse(
  span: Span,
  code: string,
  what: string,
  mend: string,
  rest: { readonly why?: string; readonly facts?: Readonly<Record<string, number | string>> } = {},
): never {
  const { start, end } = span;
  throw new Trouble({ code, what, mend, ...rest, where: `sign ${start + 1} of the text`, start, end });
}
