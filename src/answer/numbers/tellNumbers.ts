/** Plain expressions of a study told, each with its span; the engines are asked once for all of them. */

import type { Problem } from '../../numerics/problem.ts';
import type { Study } from '../../study/model.ts';
import type { Crew } from '../asked/crew.ts';
import { type Ask, askKey } from '../asked/model.ts';
import {
  type CompiledExpression,
  compileExpression,
  type ExpressionProblem,
  scopeOf,
} from '../expression/index.ts';
import { choicesOf } from '../sentences/alternatives.ts';
import { bandOf } from '../sentences/bandOf.ts';
import { type DrawnAsks, drawnAsks, readerAt } from '../sentences/drawnAsks.ts';
import { type DrawOptions, drawAsks } from '../spread/index.ts';
import type { ToldNumber, ToldNumbers } from './model.ts';

/** One expression with the places of its asks among those of all, or why it cannot be read. */
export type AskedNumber =
  | {
      readonly ok: true;
      readonly expression: string;
      readonly compiled: CompiledExpression;
      readonly places: readonly number[];
    }
  | { readonly ok: false; readonly expression: string; readonly problem: ExpressionProblem };

export interface AskedNumbers {
  readonly numbers: readonly AskedNumber[];
  /** No two alike. */ readonly asks: readonly Ask[];
}

/** What is to be asked for these expressions; nothing is computed. */
export function asksOfNumbers(study: Study, expressions: Iterable<string>): AskedNumbers {
  const scope = scopeOf(study);
  const asks: Ask[] = [];
  const placeOf = new Map<string, number>();
  const numbers = [...new Set(expressions)].map((expression): AskedNumber => {
    const compiled = compileExpression(expression, scope);
    if (!compiled.ok) return { ok: false, expression, problem: compiled.problem };
    const places = compiled.value.asks.map((ask) => {
      const key = askKey(ask);
      const place = placeOf.get(key) ?? asks.push(ask) - 1;
      placeOf.set(key, place);
      return place;
    });
    return { ok: true, expression, compiled: compiled.value, places };
  });
  return { numbers, asks };
}

/** @throws ProblemError of the draws; what the crew throws, an abort among it */
export async function tellNumbers(
  study: Study,
  expressions: Iterable<string>,
  crew: Crew,
  options: DrawOptions = {},
): Promise<ToldNumbers> {
  const { numbers, asks } = asksOfNumbers(study, expressions);
  const drawn = asks.length === 0 ? null : drawnAsks(await drawAsks(study, asks, crew, options), study);
  return new Map(numbers.map((number) => [number.expression, toldNumber(number, drawn)]));
}

function toldNumber(number: AskedNumber, drawn: DrawnAsks | null): ToldNumber {
  const { expression } = number;
  if (!number.ok) return without(expression, number.problem);
  const { compiled, places } = number;
  const { quantity, dimension, isDifference } = compiled;
  const madeOf = [...new Set(compiled.asks.map((ask) => ask.quantity))];
  const about = { expression, quantity, madeOf, dimension, isDifference };
  const middle = places.map((place) => drawn?.middle[place]);
  const values = middle.map((told) => (told?.ok === true ? told.value : null));
  const value = compiled.evaluate(values);
  if (value === null) {
    return { ...about, value, low: null, high: null, problem: absence(compiled, values, middle) };
  }
  if (drawn === null) return { ...about, value, low: value, high: value, problem: null };
  const own = readerAt(places);
  const band = bandOf(drawn, choicesOf({ places }, drawn), { places }, (row) => compiled.evaluate(own(row)));
  return {
    ...about,
    value,
    low: Math.min(value, band?.low ?? value),
    high: Math.max(value, band?.high ?? value),
    problem: null,
  };
}

const without = (expression: string, { start, end, ...problem }: ExpressionProblem): ToldNumber => ({
  expression,
  value: null,
  low: null,
  high: null,
  quantity: null,
  madeOf: [],
  dimension: [0, 0, 0, 0, 0, 0],
  isDifference: false,
  problem: { ...problem, facts: { ...problem.facts, start, end } },
});

/** The problem of what was asked, else that of the arithmetic. */
function absence(
  compiled: CompiledExpression,
  values: readonly (number | null)[],
  middle: readonly (DrawnAsks['middle'][number] | undefined)[],
): Problem {
  const absent = compiled.absent(values);
  const told = absent === null || absent.ask === null ? undefined : middle[absent.ask];
  if (told?.ok === false) return told.problem;
  return {
    code: 'number-without-value',
    what: `${absent?.expression ?? compiled.text} has no value. ${absent?.why ?? ''}`.trim(),
    mend: 'Ask it at another place, or another quantity.',
  };
}
