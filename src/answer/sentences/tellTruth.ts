/** What is true of a test in words with numbers, and the numbers that decide it. */

import { capital } from '../../study/capital.ts';
import { NUMBER } from '../expression/dimensions.ts';
import type { Decision, NamedNumber } from '../expression/model.ts';
import { bandOf } from './bandOf.ts';
import { bandApart, type Clause, clauseOf, type Teller } from './clause.ts';
import { readerAt } from './drawnAsks.ts';
import { expressionWords } from './expressionWords.ts';
import { type Measured, type MeasuredNumber, measuredBy } from './measured.ts';
import type { DecidingNumber } from './model.ts';
import { rangeClause } from './rangeClause.ts';
import type { Computed } from './saidNumbers.ts';
import { ownValues, type PlacedTest } from './shareOf.ts';
import { unitOfNumber } from './sideUnit.ts';
import { spanWords } from './spanWords.ts';

export interface Truth {
  /** Null where nothing can be told. */ readonly words: string | null;
  /** The same as a test; null where it has none. */ readonly holds: string | null;
  /** What numbers in the words are held against. */ readonly computed: readonly Computed[];
}

/** More comparisons than this are told by their verdict alone. */
const MOST_CLAUSES = 3;
/** Of the draws, what is said must hold in. */
const TRUE_IN = 0.95;

export function truthOf(placed: PlacedTest, decision: Decision, teller: Teller): Truth {
  const { test } = placed;
  const measured = decision.sides.flatMap((side) => measuredBy(side, teller.compile, isComparable(teller)));
  const clauses = distinct(measured.flatMap((one) => clauseOf(one, teller) ?? [])).filter((clause) =>
    isTrue(clause, teller),
  );
  const computed = [
    ...clauses.flatMap(({ words, share }): Computed[] =>
      share === null ? [] : [{ words, band: share, dimension: NUMBER, isShareMore: true }],
    ),
    ...measured.flatMap((one) => computedOf(one, teller)),
  ];
  if (test.ranges.length > 0) {
    const words = rangeClause(placed, decision, teller);
    return { words, holds: null, computed };
  }
  if (clauses.length === 0 || clauses.length > MOST_CLAUSES) return { words: null, holds: null, computed };
  return {
    words: clauses.map(({ words }) => words).join(' '),
    holds: clauses.map(({ holds }) => holds).join(' and '),
    computed,
  };
}

/** Both above nothing throughout: then one is so many times the other. */
const isComparable =
  ({ bandOfNumber }: Teller) =>
  (...both: readonly MeasuredNumber[]): boolean =>
    both.every((number) => {
      const band = bandOfNumber(number);
      return band !== null && band.low > 0;
    });

const distinct = (clauses: readonly Clause[]): readonly Clause[] =>
  clauses.filter((one, i) => clauses.findIndex(({ words }) => words === one.words) === i);

/** What is to be said is held to the same draws as the sentence itself. */
function isTrue({ value, places }: Clause, { drawn, choices }: Teller): boolean {
  return choices.every((alternative) => {
    let told = 0;
    let so = 0;
    drawn.eachRow({ places, alternative }, (row) => {
      const one = value(row);
      if (one === null) return;
      told += 1;
      if (one) so += 1;
    });
    return so >= TRUE_IN * told;
  });
}

/** The amounts behind a comparison, each by itself. */
function computedOf(measured: Measured, teller: Teller): readonly Computed[] {
  const parts = measured.is === 'value' ? [measured.of] : [measured.one, measured.other];
  const numbers = parts.map((part) => ({
    text: expressionWords(part.expression, teller.engines, teller.compile),
    dimension: part.expression.dimension,
    quantity: part.expression.quantity,
    madeOf: part.expression.asks.map(({ quantity }) => quantity),
    band: teller.bandOfNumber(part),
  }));
  const [one, other] = numbers;
  const all = [...numbers];
  if (one !== undefined && other !== undefined && measured.is === 'more') {
    all.push({
      ...one,
      text: `the amount by which ${one.text} is more than ${other.text}`,
      band: bandApart(measured.one, measured.other, teller),
    });
  }
  return all.flatMap(({ text, dimension, quantity, madeOf, band }): Computed[] => {
    if (band === null) return [];
    const unit = unitOfNumber(quantity, dimension, madeOf, [band.low, band.high]);
    const words = `${capital(text)} is ${spanWords(band.low, band.high, unit).words}.`;
    return [{ words, band, dimension, isShareMore: false }];
  });
}

/** The numbers of the test with their bands; inside ranges, those at the place that decides. */
export function decidingNumbers(
  placed: PlacedTest,
  decision: Decision,
  teller: Teller,
): readonly DecidingNumber[] {
  const { test } = placed;
  const middle = teller.drawn.middle.map((told) => (told.ok ? told.value : null));
  const numbers: readonly TestNumber[] =
    test.numbers.length > 0 ? test.numbers : sidesAsNumbers(placed, decision);
  const own = readerAt(placed.places);
  return numbers.flatMap(({ expression, quantity, ask, dimension, evaluate }): DecidingNumber[] => {
    const value = evaluate(ownValues(placed, middle));
    const band =
      ask === null
        ? bandOf(teller.drawn, teller.choices, placed, (row) => evaluate(own(row)))
        : teller.bandOfAsk(placed.places[ask]!);
    if (value === null || band === null) return [];
    const [low, high] = [Math.min(band.low, value), Math.max(band.high, value)];
    const madeOf = test.asks.map((ask) => ask.quantity);
    const { words } = spanWords(low, high, unitOfNumber(quantity, dimension, madeOf, [low, high]));
    return [{ expression, quantity, value, low, high, words }];
  });
}

type TestNumber = Pick<NamedNumber, 'expression' | 'quantity' | 'ask' | 'dimension' | 'evaluate'>;

/** Both sides of what decides inside a range. */
function sidesAsNumbers({ test }: PlacedTest, { sides, witnesses }: Decision): readonly TestNumber[] {
  const [side] = sides;
  if (side === undefined || witnesses.length === 0) return [];
  return (['left', 'right'] as const).flatMap((which) => {
    const { expression, quantity, ask, fixed } = side.names[which];
    if (fixed) return [];
    const evaluate: TestNumber['evaluate'] = (values) =>
      ask === null ? (test.sides(values)[0]?.[which] ?? null) : (values[ask] ?? null);
    return [{ expression, quantity, ask, dimension: side.dimension, evaluate }];
  });
}
