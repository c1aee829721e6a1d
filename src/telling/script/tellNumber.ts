/** One live number as it stands in the words, and as it is said aloud. */

import { isNumber } from '../../answer/expression/dimensions.ts';
import type { ToldNumber } from '../../answer/numbers/index.ts';
import { type SaidSpan, spanWords } from '../../answer/sentences/spanWords.ts';
import { numberInWords } from '../../answer/spoken/numberWords.ts';
import { findUnitWords } from '../../answer/spoken/unitWords.ts';
import type { Problem } from '../../numerics/problem.ts';
import type { NumberPiece, ScriptUnits } from '../../study/script/model.ts';
import { formatNumber } from '../numbers/formatNumber.ts';
import { type ShownUnit, shownUnit, unitsFor } from './audienceUnits.ts';
import type { ResolvedNumber } from './model.ts';
import { convertedDigits, digitsAllowed, isOpenSpan, type RoundedNumber, roundedTo } from './rounding.ts';

/** Written and said. */
interface Both {
  readonly text: string;
  readonly spoken: string;
}

export function tellNumber(
  piece: NumberPiece,
  told: ToldNumber | undefined,
  audience: ScriptUnits,
): ResolvedNumber {
  const problem = told === undefined ? notTold(piece) : (told.problem ?? unitProblem(piece, told));
  const { value = null, low = null, high = null } = told ?? {};
  if (told === undefined || problem !== null || value === null || low === null || high === null) {
    const text = `[no value: ${piece.expression}]`;
    return {
      kind: 'number',
      piece,
      text,
      spoken: text,
      value: null,
      low: null,
      high: null,
      unit: '',
      digits: 0,
      problem,
    };
  }
  // What stands in the words is the unit that is written there: it is not converted.
  const units = unitsFor(piece.unit ?? null, told, piece.bare ? 'metric' : audience);
  const [unit, other] =
    piece.bare && piece.unit !== undefined ? [exactly(piece.unit, told) ?? units[0]] : units;
  const first = tellIn(unit, value, low, high, piece);
  // For an audience of customary units, too, the digits are those of the metric number.
  const behind = audience === 'customary' ? piece : { ...piece, about: false };
  const second = other === undefined ? null : tellConverted(other, unit, told, first, behind);
  const [shown, also] = audience === 'customary' && second !== null ? [second, null] : [first, second];
  return {
    kind: 'number',
    piece,
    text: textOf(shown, also, piece),
    spoken: also === null ? shown.spoken : `${shown.spoken}, or ${also.spoken}`,
    value,
    low,
    high,
    unit: shown.unit,
    digits: shown.rounded.digits,
    problem: null,
  };
}

const exactly = (symbol: string, { dimension, isDifference }: ToldNumber): ShownUnit | null =>
  shownUnit(symbol, dimension, isDifference);

function textOf(first: Both, second: Both | null, { spoken }: NumberPiece): string {
  if (spoken) return second === null ? first.spoken : `${first.spoken}, or ${second.spoken}`;
  return second === null ? first.text : `${first.text} (${second.text})`;
}

interface Told extends Both {
  readonly rounded: RoundedNumber;
  readonly unit: string;
}

function tellIn(unit: ShownUnit, value: number, low: number, high: number, piece: NumberPiece): Told {
  if (piece.span) return spanIn(unit, low, high, piece);
  const [own, from, to] = [value, low, high].map((one) => inUnit(unit, one)) as [number, number, number];
  const digits = piece.digits ?? digitsAllowed(own, from, to);
  const rounded = roundedTo(own, digits, isOpenSpan(own, from, to));
  return { ...wordsOf(rounded, unit, piece), rounded, unit: unit.symbol };
}

function tellConverted(
  other: ShownUnit,
  unit: ShownUnit,
  { value, low, high }: ToldNumber,
  { rounded: source }: Told,
  piece: NumberPiece,
): Told {
  if (piece.span) return spanIn(other, low!, high!, piece);
  const own = inUnit(other, value!);
  const digits = convertedDigits(source, other.perSI / unit.perSI, own);
  const rounded = roundedTo(own, digits, !source.isExact);
  return { ...wordsOf(rounded, other, piece), rounded, unit: other.symbol };
}

const inUnit = ({ perSI, zero }: ShownUnit, value: number): number =>
  Number(((value - zero) * perSI).toPrecision(12));

function wordsOf(
  { value, digits, isExact }: RoundedNumber,
  unit: ShownUnit,
  { about, bare }: NumberPiece,
): Both {
  const before = about && !isExact ? 'about ' : '';
  const number = formatNumber(value, digits, true);
  return {
    text: `${before}${bare ? number : withSymbol(number, unit.symbol)}`,
    spoken: `${before}${said(value, digits, bare ? '' : unit.symbol)}`,
  };
}

const withSymbol = (number: string, symbol: string): string =>
  symbol === '' || symbol === '°' ? `${number}${symbol}` : `${number}\u00a0${symbol}`;

/** In words; a unit without words stays as it is written. */
function said(value: number, digits: number, symbol: string): string {
  const { words, isOne, ofParts } = numberInWords(value, Math.min(6, Math.max(1, digits)));
  const { one, many } = findUnitWords(symbol) ?? { one: symbol, many: symbol };
  if (one === '') return words;
  if (ofParts) return `${words} of a ${one}`;
  return `${words} ${isOne ? one : many}`;
}

/** Most digits that an end of a span is written with. */
const SPAN_DIGITS = 6;
/** Most digits of a span that is told as one round number: four near the whole, 99.96 % or 100.4 %. */
const ROUND_DIGITS = 4;

function spanIn(unit: ShownUnit, low: number, high: number, { bare }: NumberPiece): Told {
  const { zero } = unit;
  const found = spanWords(low - zero, high - zero, bare ? { ...unit, symbol: '' } : unit);
  const [from, to] = [found.low, found.high].map((end) =>
    Number((end * unit.perSI).toPrecision(SPAN_DIGITS)),
  ) as [number, number];
  const rounded = { value: (from + to) / 2, digits: SPAN_DIGITS, step: to - from, isExact: from === to };
  return {
    text: found.words,
    spoken: saidSpan(found, from, to, bare ? '' : unit.symbol),
    rounded,
    unit: unit.symbol,
  };
}

function saidSpan({ words }: SaidSpan, from: number, to: number, symbol: string): string {
  if (words.startsWith('between '))
    return `between ${said(from, SPAN_DIGITS, '')} and ${said(to, SPAN_DIGITS, symbol)}`;
  const about = words.startsWith('about ') ? 'about ' : '';
  return `${about}${said(Number(((from + to) / 2).toPrecision(ROUND_DIGITS)), ROUND_DIGITS, symbol)}`;
}

const notTold = ({ expression }: NumberPiece): Problem => ({
  code: 'number-not-told',
  what: `${expression} has not been worked out yet.`,
  mend: 'Wait, or work the study out again.',
});

function unitProblem({ unit }: NumberPiece, { dimension, isDifference }: ToldNumber): Problem | null {
  if (unit === undefined || shownUnit(unit, dimension, isDifference) !== null) return null;
  const kind = isNumber(dimension) ? 'a plain number; it is told bare or in %' : 'of another kind';
  return {
    code: 'unit-of-other-kind',
    what: `It is to be told in ${unit}, but it is ${kind}.`,
    mend: 'Take the unit out: then its usual one is taken.',
  };
}
