/** The door: from a text to a compiled test or expression, or to the reason why not and where. */

import { buildExpression } from './buildExpression.ts';
import { buildTest } from './buildTest.ts';
import { absentIn, readerOf, told } from './built.ts';
import type { BuiltTest, Findings } from './builtTest.ts';
import type {
  AskedValues,
  Compiled,
  CompiledExpression,
  CompiledTest,
  NamedNumber,
  TestScope,
} from './model.ts';
import { readExpression, readTest } from './readTest.ts';
import { Trouble } from './trouble.ts';
import { newWorkshop } from './workshop.ts';

/** A test such as `plug.thrust(0 km) > bell.thrust(0 km)`; nothing is computed, only what to ask is settled. */
export const compileTest = (text: string, scope: TestScope): Compiled<CompiledTest> =>
  orProblem(() => testOf(text, scope));

/** A plain value such as `plug.thrust(0 km) - bell.thrust(0 km)`. */
export const compileExpression = (text: string, scope: TestScope): Compiled<CompiledExpression> =>
  orProblem(() => expressionOf(text, scope));

function orProblem<T>(compile: () => T): Compiled<T> {
  try {
    return { ok: true, value: compile() };
  } catch (error) {
    if (error instanceof Trouble) return { ok: false, problem: error.problem };
    throw error;
  }
}

function testOf(text: string, scope: TestScope): CompiledTest {
  const numbers: NamedNumber[] = [];
  const shop = { ...newWorkshop(text, scope), numbers };
  const test = buildTest(readTest(text), new Map(), shop);
  return {
    text,
    asks: shop.asks,
    numbers,
    ranges: shop.ranges,
    holds: test.holds,
    margin: (values) => told(test.margin(values)),
    sides: (values) => findingsOf(test, values).sides,
    decide: (values) => {
      const found = findingsOf(test, values);
      const holds = test.holds(values);
      return {
        holds,
        margin: holds === null ? null : told(test.margin(values)),
        absent: holds === null ? test.absent(values) : null,
        ...found,
      };
    },
  };
}

function findingsOf(test: BuiltTest, values: AskedValues): Findings {
  const found: Findings = { sides: [], witnesses: [] };
  test.explain(values, found);
  return found;
}

function expressionOf(text: string, scope: TestScope): CompiledExpression {
  const shop = newWorkshop(text, scope);
  const built = buildExpression(readExpression(text), new Map(), shop);
  const read = readerOf(built);
  return {
    text,
    expression: text,
    asks: shop.asks,
    ranges: shop.ranges,
    quantity: built.quantity,
    ask: built.ask,
    dimension: built.dimension,
    isDifference: built.scale === 'difference',
    evaluate: (values: AskedValues) => told(read(values)),
    absent: (values: AskedValues) => absentIn(built, values, text),
  };
}
