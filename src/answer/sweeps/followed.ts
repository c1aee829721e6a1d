/** The expressions of a sweep, compiled so that what they leave open is taken where the sweep is. */

import { ProblemError } from '../../numerics/problem.ts';
import type { Study } from '../../study/model.ts';
import { ownersOf } from '../../study/owners.ts';
import { type Ask, askKey } from '../asked/model.ts';
import { ownersNamed } from '../asked/ownersAsked.ts';
import { quantity } from '../catalogue.ts';
import { type CompiledExpression, compileExpression, scopeOf } from '../expression/index.ts';
import { askWords, type OwnersById, ownersById, placeWords } from '../sentences/askWords.ts';
import type { Origin, SweptRange, ToldOf } from './model.ts';
import { quantityOf } from './quantityOf.ts';

export interface Followed {
  readonly expressions: readonly CompiledExpression[];
  readonly told: readonly ToldOf[];
  /** All asks, each once. */ readonly asks: readonly Ask[];
  /** For each expression, where its asks stand in that list. */ readonly places: readonly (readonly number[])[];
  /** Vehicles and the engines below them included. */ readonly engines: readonly string[];
}

const MOST_CURVES = 8;

/** @throws ProblemError where a text is no expression */
export function followedOf(study: Study, of: readonly string[], ranges: readonly SweptRange[]): Followed {
  if (of.length === 0 || of.length > MOST_CURVES) {
    throw new ProblemError({
      code: 'sweep-curves',
      what:
        of.length === 0
          ? 'The sweep follows nothing.'
          : `The sweep follows ${of.length} expressions; up to ${MOST_CURVES} are drawn.`,
      mend: 'Name one or a few, e.g. bell.specificImpulse(vacuum).',
    });
  }
  const open = new Set(ranges.map(({ over }) => leftOpenBy(over)));
  const scope = scopeOf(study);
  const lenient = {
    ...scope,
    askProblem: (ask: Ask) => {
      const problem = scope.askProblem(ask);
      return problem !== null && open.has(problem.code) ? null : problem;
    },
  };
  const expressions = of.map((text) => {
    const compiled = compileExpression(text, lenient);
    if (compiled.ok) return compiled.value;
    const { start, end, ...problem } = compiled.problem;
    throw new ProblemError({ ...problem, where: text, facts: { ...problem.facts, start, end } });
  });
  const asks = new Map<string, Ask>();
  for (const { asks: own } of expressions) for (const ask of own) asks.set(askKey(ask), ask);
  const keys = [...asks.keys()];
  const order = ownersOf(study).map(({ id }) => id);
  const byId = ownersById(study);
  const named = new Set([...asks.values()].flatMap((ask) => ownersNamed(ask, byId)));
  return {
    expressions,
    told: expressions.map((expression) => toldOf(expression, order, byId)),
    asks: [...asks.values()],
    places: expressions.map(({ asks: own }) => own.map((ask) => keys.indexOf(askKey(ask)))),
    engines: order.filter((id) => named.has(id)),
  };
}

/** The problem of an expression that is none where the sweep fills it in. */
function leftOpenBy(over: string): string | null {
  if (over === 'time') return 'time-missing';
  return over === 'altitude' || over === 'ambientPressure' ? 'ambient-missing' : null;
}

function toldOf(expression: CompiledExpression, order: readonly string[], byId: OwnersById): ToldOf {
  const engines = order.filter((id) => expression.asks.some(({ engine }) => engine === id));
  const of = quantityOf(expression);
  const ask = expression.quantity === null ? undefined : expression.asks[0];
  return {
    expression: expression.text,
    label: of !== null && expression.quantity !== null ? quantity(of).label : expression.text,
    words: ask === undefined ? expression.text : askWords(ask, byId).replace(/^the /, ''),
    parts:
      ask === undefined
        ? null
        : { owner: byId.get(ask.engine ?? '')?.name ?? 'air', place: placeWords(ask, byId).trim() },
    dimension: expression.dimension,
    quantity: of,
    engines,
  };
}

/** Models and sources of all that is asked, each once. */
export function originOf({ asks }: Followed): Origin {
  const entries = asks.map((ask) => quantity(ask.quantity));
  return {
    models: [...new Set(entries.map(({ model }) => model))],
    sources: [...new Set(entries.map(({ source }) => source))],
  };
}
