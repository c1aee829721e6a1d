/** What one comparison measures: a value, how much more one is than another, or how many times it is. */

import { askKey } from '../asked/model.ts';
import { type CompiledExpression, compileExpression, type TestScope } from '../expression/index.ts';
import type { ComparedSides } from '../expression/model.ts';
import { type Row, readerAt } from './drawnAsks.ts';

/** One number over the draws, with the expression that it is. */
export interface MeasuredNumber {
  readonly expression: CompiledExpression;
  /** Index in the drawn list of each of its asks. */ readonly places: readonly number[];
}

/** Its value in a row of all that was drawn; null where it is absent. */
export function valueIn({ expression, places }: MeasuredNumber): (row: Row) => number | null {
  const own = readerAt(places);
  return (row) => expression.evaluate(own(row));
}

export type Measured =
  | { readonly is: 'value'; readonly of: MeasuredNumber }
  /** `by`: told as a share of the other, or in its unit. */
  | {
      readonly is: 'more';
      readonly by: 'share' | 'amount';
      readonly one: MeasuredNumber;
      readonly other: MeasuredNumber;
    }
  | { readonly is: 'times'; readonly one: MeasuredNumber; readonly other: MeasuredNumber };

export type Compile = (text: string) => MeasuredNumber | null;

/** Compiles parts of a test whose asks are all among those drawn. */
export function partCompiler(scope: TestScope, placeOf: ReadonlyMap<string, number>): Compile {
  const known = new Map<string, MeasuredNumber | null>();
  const compile: Compile = (text) => {
    const compiled = compileExpression(text, scope);
    if (!compiled.ok || compiled.value.asks.length === 0) return null;
    const places = compiled.value.asks.map((ask) => placeOf.get(askKey(ask)));
    return places.some((place) => place === undefined)
      ? null
      : { expression: compiled.value, places: places as readonly number[] };
  };
  return (text) => {
    const found = known.get(text);
    if (found !== undefined) return found;
    const compiled = compile(text);
    known.set(text, compiled);
    return compiled;
  };
}

/**
 * Empty where the sides move inside a range, or nothing is computed.
 * @param isComparable whether how many times one is the other makes sense, for sides made of several numbers
 */
export function measuredBy(
  { names: { left, right } }: ComparedSides,
  compile: Compile,
  isComparable: (one: MeasuredNumber, other: MeasuredNumber) => boolean,
): readonly Measured[] {
  if (left.fixed && right.fixed) return [];
  if (left.fixed || right.fixed) return present(sideOf((left.fixed ? right : left).expression, compile));
  const pair = pairOf(left.expression, right.expression, compile);
  if (pair !== null && pair.is !== 'value') {
    if (isPlain(pair) || isComparable(pair.one, pair.other)) return [pair];
  }
  return [left, right].flatMap(({ expression }) => present(sideOf(expression, compile)));
}

const present = (found: Measured | null): readonly Measured[] => (found === null ? [] : [found]);

/** Both are numbers with a name of their own. */
const isPlain = (pair: Exclude<Measured, { is: 'value' }>): boolean =>
  pair.one.expression.ask !== null && pair.other.expression.ask !== null;

function sideOf(text: string, compile: Compile): Measured | null {
  const difference = splitAt(text, '-−');
  if (difference !== null) {
    const [one, other] = difference.map(compile);
    if (one && other) return { is: 'more', by: 'amount', one, other };
  }
  const quotient = splitAt(text, '/÷');
  if (quotient !== null) {
    const [one, other] = quotient.map(compile);
    if (one && other) return { is: 'times', one, other };
  }
  const of = compile(text);
  return of && { is: 'value', of };
}

/** A factor or an amount put before the other side is what is claimed, not what is measured. */
const BEFORE =
  /^(?:.*\b(?:more|less|greater|higher|lower|larger|smaller)\s+than|twice|half\s+of|half|a?\s*(?:third|quarter|fifth|tenth)\s+of|[\d.]+\s*(?:%|per cent)\s+of|[\d.]+\s*(?:[*×·]|times)|\w+\s+times)\s+(.+)$/isu;

function pairOf(left: string, right: string, compile: Compile): Measured | null {
  const one = compile(left);
  const apart = splitAt(right, '-−+')?.map(compile);
  // `a > b − 6 s`: how far a is from b, the amount is what is claimed.
  if (one && apart?.[0] && apart[1] === null) return { is: 'more', by: 'amount', one, other: apart[0] };
  const bare = BEFORE.exec(right)?.[1];
  const other = (bare === undefined ? null : compile(bare)) ?? compile(right);
  if (one === null || other === null) return null;
  const times = bare !== undefined && !/\bthan\s/.test(right);
  return times ? { is: 'times', one, other } : { is: 'more', by: 'share', one, other };
}

/** The stroke in `30 kg/s` divides nothing here. */
const UNIT_STROKE = /(?<![\w.])(\d[\d.]*\s*[A-Za-zµ]{1,4})\/(?=[A-Za-z]{1,4}[²³]?(?![\w.(]))/gu;

/** Both parts at the one sign of these outside brackets; null where there is none or more than one. */
function splitAt(text: string, signs: string): readonly [string, string] | null {
  let depth = 0;
  const found: number[] = [];
  [...text.replace(UNIT_STROKE, '$1_')].forEach((sign, i) => {
    if (sign === '(') depth += 1;
    else if (sign === ')') depth -= 1;
    else if (depth === 0 && '+-−*×·/÷^'.includes(sign)) found.push(i);
  });
  const [at] = found;
  if (found.length !== 1 || at === undefined || !signs.includes(text[at]!)) return null;
  const parts = [text.slice(0, at).trim(), text.slice(at + 1).trim()] as const;
  return parts.includes('') ? null : parts;
}
