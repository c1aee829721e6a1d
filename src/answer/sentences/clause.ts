/** What is true of one comparison, in words with numbers, and as a test of its own. */

import { capital } from '../../study/capital.ts';
import type { Ask } from '../asked/model.ts';
import { quantity } from '../catalogue.ts';
import { listed } from '../compare/speech.ts';
import type { Choices } from './alternatives.ts';
import { type OwnersById, placeWords, thatOfWords } from './askWords.ts';
import { type Band, bandOf, bandOfAsk } from './bandOf.ts';
import type { DrawnAsks, Row } from './drawnAsks.ts';
import { engineNames, expressionWords, isBeyondWords } from './expressionWords.ts';
import { type Compile, type Measured, type MeasuredNumber, valueIn } from './measured.ts';
import { moreWords, timesOrMoreWords } from './ratioWords.ts';
import { unitOfNumber } from './sideUnit.ts';
import { spanWords } from './spanWords.ts';

export interface Clause {
  readonly words: string;
  /** The same as a test. */ readonly holds: string;
  /** The asks that `value` reads, by their places in the list. */ readonly places: readonly number[];
  /** Whether it is so in one draw; null where a number is absent. */ readonly value: (
    row: Row,
  ) => boolean | null;
  /** How many times, or by which share: for numbers in words. */ readonly share: Band | null;
}

export interface Teller {
  readonly drawn: DrawnAsks;
  readonly choices: Choices;
  readonly engines: OwnersById;
  /** Of parts of the tests. */ readonly compile: Compile;
  /** Of one ask by itself, by its place in the list; null where no draw has a value. */ readonly bandOfAsk: (
    place: number,
  ) => Band | null;
  /** Of one number by itself; null likewise. */ readonly bandOfNumber: (
    number: MeasuredNumber,
  ) => Band | null;
}

/** The band of each ask and of each number, found once. */
export function bandsBy(drawn: DrawnAsks, choices: Choices): Pick<Teller, 'bandOfAsk' | 'bandOfNumber'> {
  const ofAsk = foundOnce((place: number) => bandOfAsk(drawn, choices, place));
  const ofNumber = foundOnce((number: MeasuredNumber) => {
    const { ask } = number.expression;
    return ask === null ? bandOf(drawn, choices, number, valueIn(number)) : ofAsk(number.places[ask]!);
  });
  return { bandOfAsk: ofAsk, bandOfNumber: ofNumber };
}

function foundOnce<Of>(find: (of: Of) => Band | null): (of: Of) => Band | null {
  const known = new Map<Of, Band | null>();
  return (of) => {
    const found = known.get(of);
    if (found !== undefined) return found;
    const band = find(of);
    known.set(of, band);
    return band;
  };
}

export function clauseOf(measured: Measured, teller: Teller): Clause | null {
  switch (measured.is) {
    case 'value':
      return valueClause(measured.of, teller);
    case 'times':
      return pairClause(measured.one, measured.other, 'times', teller);
    case 'more':
      return measured.by === 'amount'
        ? amountClause(measured.one, measured.other, teller)
        : pairClause(measured.one, measured.other, 'more', teller);
  }
}

function valueClause(of: MeasuredNumber, teller: Teller): Clause | null {
  const band = teller.bandOfNumber(of);
  if (band === null) return null;
  const span = spanWords(band.low, band.high, unitOf(of, band));
  return {
    words: `${headOf(of, teller)} is ${span.words}.`,
    holds: within(of.expression.text, span, unitOf(of, band).symbol, unitOf(of, band).perSI),
    places: of.places,
    value: inside(valueIn(of), span),
    share: null,
  };
}

/** `A is between 3 and 6 s more than B` */
function amountClause(one: MeasuredNumber, other: MeasuredNumber, teller: Teller): Clause | null {
  const { drawn, choices } = teller;
  const both = placesOf(one, other);
  const [first, second] = [valueIn(one), valueIn(other)];
  const band = bandApart(one, other, teller);
  if (band === null) return null;
  const unit = unitOf(one, band);
  const [low, high, word] = band.high <= 0 ? [-band.high, -band.low, 'less'] : [band.low, band.high, 'more'];
  const span = spanWords(low, high, unit);
  const open = band.low < 0 && band.high > 0;
  const how = open ? `${span.words} more (below zero: less)` : `${span.words} ${word}`;
  const signed = word === 'less' ? { ...span, low: -span.high, high: -span.low } : span;
  return {
    words: `${headOf(one, teller)} is ${how} than ${nameBeside(one, other, teller)}.`,
    holds: within(`(${one.expression.text}) - (${other.expression.text})`, signed, unit.symbol, unit.perSI),
    ...both,
    value: inside((row) => less(first(row), second(row)), signed),
    share: bandOf(drawn, choices, both, (row) => shareMore(first(row), second(row))),
  };
}

/** Of one number less the other. */
export function bandApart(one: MeasuredNumber, other: MeasuredNumber, teller: Teller): Band | null {
  const [first, second] = [valueIn(one), valueIn(other)];
  return bandOf(teller.drawn, teller.choices, placesOf(one, other), (row) => less(first(row), second(row)));
}

/** `A is about a third more than B`, `A is between 1.4 and 1.6 times B` */
function pairClause(
  one: MeasuredNumber,
  other: MeasuredNumber,
  as: 'more' | 'times',
  teller: Teller,
): Clause | null {
  const { drawn, choices } = teller;
  const both = placesOf(one, other);
  const [first, second] = [valueIn(one), valueIn(other)];
  const shareIn = (row: Row): number | null => shareMore(first(row), second(row));
  const share = bandOf(drawn, choices, both, shareIn);
  if (share === null) return null;
  const words = as === 'more' ? moreWords : timesOrMoreWords;
  const span = words(share.low, share.high);
  const base = `(${one.expression.text}) / (${other.expression.text})`;
  return {
    words: `${headOf(one, teller)} is ${span.words} ${nameBeside(one, other, teller)}.`,
    holds: within(base, { low: 1 + span.low, high: 1 + span.high }, '', 1),
    ...both,
    value: inside(shareIn, span),
    share,
  };
}

const placesOf = (one: MeasuredNumber, other: MeasuredNumber): Pick<Clause, 'places'> => ({
  places: [...new Set([...one.places, ...other.places])],
});

const less = (a: number | null, b: number | null): number | null => (a === null || b === null ? null : a - b);

/** (a − b)/|b|; null where b is nothing. */
export const shareMore = (a: number | null, b: number | null): number | null =>
  a === null || b === null || b === 0 ? null : (a - b) / Math.abs(b);

function unitOf({ expression }: MeasuredNumber, band: Band): ReturnType<typeof unitOfNumber> {
  const madeOf = expression.asks.map((ask) => ask.quantity);
  return unitOfNumber(expression.quantity, expression.dimension, madeOf, [band.low, band.high]);
}

const headOf = (number: MeasuredNumber, teller: Teller): string => capital(nameOf(number, teller));

const nameOf = ({ expression }: MeasuredNumber, { engines, compile }: Teller): string =>
  expressionWords(expression, engines, compile);

function nameBeside(one: MeasuredNumber, other: MeasuredNumber, teller: Teller): string {
  const { engines, compile } = teller;
  if (isAlikeWorkedOut(one, other, teller))
    return `what it works out for ${listed(engineNames(other.expression.asks, engines))}`;
  const [first, second] = [one, other].map(({ expression }) =>
    expression.ask === null ? undefined : expression.asks[expression.ask],
  );
  if (first === undefined || second === undefined || second.engine === null) return nameOf(other, teller);
  return quantity(first.quantity).label === quantity(second.quantity).label && first.part === second.part
    ? besideOwn(first, second, engines)
    : expressionWords(other.expression, engines, compile);
}

/** Of one engine, where both places are named, these alone tell the two apart: `that in vacuum`. */
function besideOwn(first: Ask, second: Ask, engines: OwnersById): string {
  const places = [first, second].map((ask) => placeWords(ask, engines));
  const isAsItStands = first.inputs.length > 0 && second.inputs.length === 0;
  const apart = first.engine === second.engine && !isAsItStands && places.every((place) => place !== '');
  return apart ? `that${places[1]}` : thatOfWords(second, engines);
}

/** Both too complex for words, of the same quantities of two engines. */
function isAlikeWorkedOut(one: MeasuredNumber, other: MeasuredNumber, { engines, compile }: Teller): boolean {
  const [first, second] = [one, other].map(({ expression: { asks } }) =>
    asks.map((ask) => `${ask.quantity} ${placeWords(ask, engines)}`).join('; '),
  );
  const [names, others] = [one, other].map(({ expression }) => engineNames(expression.asks, engines).join());
  return (
    first === second &&
    names !== others &&
    [one, other].every(({ expression }) => isBeyondWords(expression, engines, compile))
  );
}

const inside =
  (value: (row: Row) => number | null, { low, high }: Band) =>
  (row: Row): boolean | null => {
    const found = value(row);
    const slack = SLACK * Math.max(Math.abs(low), Math.abs(high));
    return found === null ? null : found >= low - slack && found <= high + slack;
  };

/** Rounding of the numbers on their way into the test and back. */
const SLACK = 1e-9;

function within(text: string, { low, high }: Band, symbol: string, perSI: number): string {
  const size = Math.max(Math.abs(low), Math.abs(high));
  const slack = high - low > 1e-6 * size ? 0 : SLACK * size;
  const [least, most] = [low - slack, high + slack];
  const unit = symbol === '' ? '' : symbol === '°' ? ' deg' : ` ${symbol}`;
  return `${text} is between ${written(least * perSI)}${unit} and ${written(most * perSI)}${unit}`;
}

function written(value: number): string {
  const text = String(Number(value.toPrecision(10)));
  return text.includes('e') ? value.toFixed(12) : text;
}
