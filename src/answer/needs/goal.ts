/** The two sides of the comparison that is to hold. */

import { ProblemError } from '../../numerics/problem.ts';
import { readTest } from '../expression/readTest.ts';
import { Trouble } from '../expression/trouble.ts';

export interface Goal {
  readonly left: string;
  readonly right: string;
  /** Left is to be the larger one. */ readonly leftAbove: boolean;
}

/** @throws ProblemError where the text is no plain comparison of two expressions */
export function goalOf(text: string): Goal {
  const test = treeOf(text);
  if (test.is !== 'compare') {
    throw new ProblemError({
      code: 'need-no-comparison',
      what: `“${text}” is no plain comparison of two numbers.`,
      mend: 'Write two expressions with >=, <=, > or < between them, e.g. bell.specificImpulse(vacuum) >= plug.specificImpulse(vacuum).',
      where: text,
    });
  }
  const side = ({ start, end }: { readonly start: number; readonly end: number }): string =>
    text.slice(start, end).trim();
  const leftAbove = test.operator === '>' || test.operator === '>=';
  return { left: side(test.left), right: side(test.right), leftAbove };
}

function treeOf(text: string): ReturnType<typeof readTest> {
  try {
    return readTest(text);
  } catch (error) {
    if (!(error instanceof Trouble)) throw error;
    const { start, end, ...problem } = error.problem;
    throw new ProblemError({ ...problem, where: text, facts: { ...problem.facts, start, end } });
  }
}
