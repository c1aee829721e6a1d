/** Numbers out of spoken words: `a hundred and twenty-two point five bar`, `nineteen fifty-seven`, `one point two million`. */

import { findUnit, toSI } from '../../study/units.ts';
import { type Dimension, unitTable } from '../../study/unitTable.ts';
import { saidWords } from '../time/saidWords.ts';
import { unitSaid } from '../time/unitSaid.ts';

export interface NumberSaid {
  /** [SI] */ readonly value: number;
  readonly dimension: Dimension;
  /** What rounding may hide [SI]: half of the last digit that is no nought, at most 7.5 % of a round number, a fifth of any. */
  readonly rounding: number;
  /** Words that it takes. */ readonly length: number;
}

const SMALL = new Map(
  'zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen'
    .split(' ')
    .map((word, value) => [word, value]),
);
const TENS = new Map(
  'twenty thirty forty fifty sixty seventy eighty ninety'.split(' ').map((word, i) => [word, 20 + 10 * i]),
);
const SCALES = new Map([
  ['thousand', 1e3],
  ['million', 1e6],
  ['billion', 1e9],
  ['trillion', 1e12],
]);
/** A round number hides no more. */
const ROUNDED = 0.075;
/** A number of one digit hides no more: 1 is not 0.5. */
const FEW_DIGITS = 0.2;

/** Null where no number begins at `at`. @param words lower case */
export function numberSaid(words: readonly string[], at: number): NumberSaid | null {
  const isNegative = words[at] === 'minus';
  const start = isNegative ? at + 1 : at;
  const read = wholeSaid(words, start);
  if (read === null) return null;
  let { value, next } = read;
  let last = halfOfLast(value);
  if (words[next] === 'point') {
    const digits = digitsFrom(words, next + 1);
    if (digits !== '') {
      value += Number(`0.${digits}`);
      last = 0.5 * 10 ** -digits.length;
      next += 1 + digits.length;
      const scale = SCALES.get(words[next] ?? '');
      if (scale !== undefined) [value, last, next] = [value * scale, last * scale, next + 1];
    }
  }
  const power = powerOfTen(words, next);
  if (power !== null) [value, last, next] = [value * power.factor, last * power.factor, power.next];
  const unit = unitFrom(words, next);
  const sign = isNegative ? -1 : 1;
  if (unit === null) return { value: sign * value, dimension: NUMBER, rounding: last, length: next - at };
  const found = findUnit(unit.symbol)!;
  return {
    value: toSI(sign * value, found),
    dimension: found.dimension,
    rounding: (last * found.times) / found.over,
    length: next + unit.length - at,
  };
}

const NUMBER: Dimension = [0, 0, 0, 0, 0, 0];

function halfOfLast(value: number): number {
  const zeros = /(?<=[1-9])0+$/.exec(String(value))?.[0].length ?? 0;
  const half = 0.5 * 10 ** zeros;
  return Math.min(half, (zeros === 0 ? FEW_DIGITS : ROUNDED) * value);
}

interface WholeSaid {
  readonly value: number;
  readonly next: number;
}

function wholeSaid(words: readonly string[], at: number): WholeSaid | null {
  let i = at;
  if ((words[i] === 'a' || words[i] === 'an') && isScale(words[i + 1])) i += 1;
  let [total, part, isAny] = [0, null as number | null, false];
  for (;;) {
    const word = words[i] ?? '';
    const scale = SCALES.get(word);
    // `a hundred`, or so many hundred.
    const counts = part !== null || (i > at && !isAny);
    if (word === 'hundred' && counts) {
      part = (part ?? 1) * 100;
      i += 1;
    } else if (scale !== undefined && counts) {
      total += (part ?? 1) * scale;
      part = null;
      i += 1;
    } else if (
      word === 'and' &&
      isAny &&
      (part === null || part % 100 === 0) &&
      below100(words, i + 1) !== null
    ) {
      i += 1;
      continue;
    } else {
      const low = below100(words, i);
      if (low === null) break;
      if (part === null) part = low.value;
      else if (part % 100 === 0 && part > 0) part += low.value;
      else if (total === 0 && part >= 11 && part <= 20 && low.value >= 10) part = 100 * part + low.value;
      else break;
      i = low.next;
    }
    isAny = true;
  }
  return isAny ? { value: total + (part ?? 0), next: i } : null;
}

const isScale = (word: string | undefined): boolean => word === 'hundred' || SCALES.has(word ?? '');

function below100(words: readonly string[], at: number): WholeSaid | null {
  const word = words[at] ?? '';
  const tens = TENS.get(word);
  if (tens === undefined) {
    const small = word === 'oh' ? undefined : SMALL.get(word);
    return small === undefined ? null : { value: small, next: at + 1 };
  }
  const ones = SMALL.get(words[at + 1] ?? '') ?? 0;
  return ones >= 1 && ones <= 9 ? { value: tens + ones, next: at + 2 } : { value: tens, next: at + 1 };
}

function digitsFrom(words: readonly string[], at: number): string {
  let digits = '';
  for (let i = at; ; i++) {
    const digit = words[i] === 'oh' ? 0 : SMALL.get(words[i] ?? '');
    if (digit === undefined || digit > 9) return digits;
    digits += String(digit);
  }
}

/** `times ten to the minus five`. */
function powerOfTen(
  words: readonly string[],
  at: number,
): { readonly factor: number; readonly next: number } | null {
  if (words.slice(at, at + 4).join(' ') !== 'times ten to the') return null;
  const isNegative = words[at + 4] === 'minus';
  const power = below100(words, at + (isNegative ? 5 : 4));
  return power === null
    ? null
    : { factor: 10 ** (isNegative ? -power.value : power.value), next: power.next };
}

const COMPOUND =
  'm/s km/s km/h m/s² ft/s ft/s² kg/s t/s g/s lb/s kg/m³ g/cm³ lb/ft³ kW/kg MJ/kg kJ/kg kW/m² MW/m² g/mol kg/mol m² cm² mm² ft² in² m³ kN/m²';
/** Said in full, the longest first. */
const UNITS: readonly { readonly words: readonly string[]; readonly symbol: string }[] = [
  ...unitTable.keys(),
  ...COMPOUND.split(' '),
]
  .flatMap((symbol) => {
    const said = unitSaid(symbol);
    if (said === null || findUnit(symbol) === null) return [];
    return [said.one, said.many].map((text) => ({ words: saidWords(text.toLowerCase()), symbol }));
  })
  .sort((a, b) => b.words.length - a.words.length);

function unitFrom(
  words: readonly string[],
  at: number,
): { readonly symbol: string; readonly length: number } | null {
  const found = UNITS.find((unit) => unit.words.every((word, i) => words[at + i] === word));
  return found === undefined ? null : { symbol: found.symbol, length: found.words.length };
}
