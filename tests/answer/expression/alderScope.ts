import { readFileSync } from 'node:fs';
import {
  type CompiledExpression,
  type CompiledTest,
  compileExpression,
  compileTest,
  type ExpressionProblem,
  scopeOf,
} from '../../../src/answer/expression/index.ts';
import { openDataShelf } from '../../../src/faces/disk/data.ts';
import { knownNames, readStudy, type Study } from '../../../src/study/index.ts';

const text = readFileSync(new URL('../../../examples/alder-booster/study.yaml', import.meta.url), 'utf8');
const outcome = readStudy(text, knownNames(await openDataShelf().propellants()));
if (!outcome.ok) throw new Error('the example study cannot be read');

/** The example study: engines bell, plug and adapting. */
export const alder: Study = outcome.study;
export const alderText = text;
export const alderScope = scopeOf(alder);

export function compiled(test: string): CompiledTest {
  const result = compileTest(test, alderScope);
  if (!result.ok) throw new Error(`${test}: ${result.problem.what}`);
  return result.value;
}

export function expressed(expression: string): CompiledExpression {
  const result = compileExpression(expression, alderScope);
  if (!result.ok) throw new Error(`${expression}: ${result.problem.what}`);
  return result.value;
}

/** The problem of a text that must not compile, with the part of the text that it points at. */
export function refused(test: string): ExpressionProblem & { readonly part: string } {
  const result = compileTest(test, alderScope);
  if (result.ok) throw new Error(`${test}: compiles`);
  return { ...result.problem, part: test.slice(result.problem.start, result.problem.end) };
}

/** Whether a test of plain numbers holds. */
export const holds = (test: string): boolean | null => compiled(test).decide([]).holds;
