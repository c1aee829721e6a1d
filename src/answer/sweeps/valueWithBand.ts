/** An expression's value from what is told of its asks, with the band that the published scatter leaves. */

import type { Problem } from '../../numerics/problem.ts';
import type { Told } from '../asked/model.ts';
import type { CompiledExpression } from '../expression/index.ts';

export interface BandedValue {
  readonly value: number;
  /** Null where nothing is known of its error. */ readonly band: {
    readonly low: number;
    readonly high: number;
    readonly of: readonly string[];
  } | null;
}

export type ExpressionValue =
  | ({ readonly ok: true } & BandedValue)
  | { readonly ok: false; readonly problem: Problem };

/**
 * Each named error is carried through the expression at either end of its band, wherever it enters, so that what two engines
 * share cancels in their difference; the departures add up as the root of their squares, each side by itself:
 *
 *   low = y − √(Σ min(0, y_i,low − y, y_i,high − y)²)        high = y + √(Σ max(0, y_i,low − y, y_i,high − y)²)
 *
 * Published alternatives bear no probability: the band is widened to each of them.
 *
 * @param told of each of the expression's asks, in their order
 */
export function valueWithBand(expression: CompiledExpression, told: readonly Told[]): ExpressionValue {
  const best = told.map((each) => (each.ok ? each.value : null));
  const value = expression.evaluate(best);
  if (value === null) return { ok: false, problem: problemOf(expression, told, best) };
  const errors = departures(expression, told, best, value);
  const others = alternativeValues(expression, told, best);
  if (errors.of.length === 0 && others.of.length === 0) return { ok: true, value, band: null };
  const low = Math.min(value, ...others.values) - errors.down;
  const high = Math.max(value, ...others.values) + errors.up;
  return { ok: true, value, band: { low, high, of: [...errors.of, ...others.of] } };
}

/** Of the ask that has no value; else of the arithmetic. */
function problemOf(
  expression: CompiledExpression,
  told: readonly Told[],
  best: readonly (number | null)[],
): Problem {
  const absent = expression.absent(best);
  const ask = absent === null || absent.ask === null ? undefined : told[absent.ask];
  if (ask !== undefined && !ask.ok) return ask.problem;
  return {
    code: 'no-value',
    what: absent === null ? `${expression.text} has no value here.` : `${absent.expression}: ${absent.why}`,
    mend: 'Ask for something that has a value here, or sweep over another range.',
  };
}

function departures(
  expression: CompiledExpression,
  told: readonly Told[],
  best: readonly (number | null)[],
  value: number,
): { readonly down: number; readonly up: number; readonly of: readonly string[] } {
  const names = new Set(told.flatMap((each) => (each.ok ? each.scatter.map(({ name }) => name) : [])));
  let down = 0;
  let up = 0;
  const of: string[] = [];
  for (const name of names) {
    const ends = (['low', 'high'] as const).map(
      (end) => expression.evaluate(atEnd(told, best, name, end)) ?? value,
    );
    const least = Math.min(0, ...ends.map((each) => each - value));
    const most = Math.max(0, ...ends.map((each) => each - value));
    if (least === 0 && most === 0) continue;
    down += least ** 2;
    up += most ** 2;
    of.push(name);
  }
  return { down: Math.sqrt(down), up: Math.sqrt(up), of };
}

function atEnd(
  told: readonly Told[],
  best: readonly (number | null)[],
  name: string,
  end: 'low' | 'high',
): readonly (number | null)[] {
  return told.map((each, i) => {
    const error = each.ok ? each.scatter.find((scatter) => scatter.name === name) : undefined;
    return error === undefined ? best[i]! : error[end];
  });
}

function alternativeValues(
  expression: CompiledExpression,
  told: readonly Told[],
  best: readonly (number | null)[],
): { readonly values: readonly number[]; readonly of: readonly string[] } {
  const all = told.flatMap((each) => (each.ok ? each.alternatives : []));
  const kinds = new Map<string, Set<string>>();
  for (const { of, by } of all) kinds.set(of, (kinds.get(of) ?? new Set()).add(by));
  const values = [...kinds].flatMap(([of, models]) =>
    [...models].flatMap((by) => {
      const chosen = told.map((each, i) => {
        const found = each.ok ? each.alternatives.find((one) => one.of === of && one.by === by) : undefined;
        return found === undefined ? best[i]! : found.value;
      });
      return expression.evaluate(chosen) ?? [];
    }),
  );
  return { values, of: [...kinds.keys()] };
}
