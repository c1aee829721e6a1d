/** Numbers with their units, as they stand in prose: `12 %`, `five kilometres`, `about a third`. */

import { remembered } from '../../numerics/remembered.ts';
import { findUnit, toSI } from '../../study/units.ts';
import type { Dimension } from '../../study/unitTable.ts';

export interface NumberInProse {
  /** As written. */ readonly text: string;
  /** [SI]; a plain number where there is no unit */ readonly value: number;
  readonly dimension: Dimension;
  /** Half a unit of its last digit, of a round number at most 7.5 % [SI]: what rounding may hide. */ readonly rounding: number;
  /** A per cent or a part or multiple of something. */ readonly share: boolean;
  /** `twice`, `a third`: how many times, not by how much. */ readonly times: boolean;
}

const NUMBER: Dimension = [0, 0, 0, 0, 0, 0];

const SMALL: Readonly<Record<string, number>> = {
  one: 1,
  two: 2,
  three: 3,
  four: 4,
  five: 5,
  six: 6,
  seven: 7,
  eight: 8,
  nine: 9,
  ten: 10,
  eleven: 11,
  twelve: 12,
  thirteen: 13,
  fourteen: 14,
  fifteen: 15,
  sixteen: 16,
  seventeen: 17,
  eighteen: 18,
  nineteen: 19,
  twenty: 20,
  thirty: 30,
  forty: 40,
  fifty: 50,
  sixty: 60,
  seventy: 70,
  eighty: 80,
  ninety: 90,
  hundred: 100,
  thousand: 1000,
};

const PARTS: readonly (readonly [RegExp, number])[] = [
  [/\b(?:one|two|three) and a half times\b/gi, 0],
  [/\btwo[ -]thirds\b/gi, 2 / 3],
  [/\bthree[ -]quarters\b/gi, 3 / 4],
  [/\ba third\b|\bone third\b/gi, 1 / 3],
  [/\ba quarter\b|\bone quarter\b/gi, 1 / 4],
  [/\ba fifth\b|\bone fifth\b/gi, 1 / 5],
  [/\ba tenth\b|\bone tenth\b/gi, 1 / 10],
  // “Half a per cent” is no half.
  [/\bhalf\b(?! (?:an? )?(?:per ?cent|%|second|kilomet|met|degree|bar\b))/gi, 1 / 2],
  [/\btwice\b|\bdouble[sd]?\b/gi, 2],
  [/\bthree times\b|\btriples?d?\b/gi, 3],
  [/\bfour times\b/gi, 4],
  [/\bten times\b/gi, 10],
];

/** How units are said, besides their symbols. */
const SAID_UNITS: Readonly<Record<string, string>> = {
  second: 's',
  kilometre: 'km',
  kilometer: 'km',
  millimetre: 'mm',
  millimeter: 'mm',
  centimetre: 'cm',
  centimeter: 'cm',
  newton: 'N',
  kilonewton: 'kN',
  meganewton: 'MN',
  pascal: 'Pa',
  kilopascal: 'kPa',
  megapascal: 'MPa',
  bar: 'bar',
  kilogram: 'kg',
  gram: 'g',
  ton: 't',
  tonne: 't',
  atmosphere: 'atm',
  minute: 'min',
  kelvin: 'K',
  degree: 'deg',
  'metres per second': 'm/s',
  'meters per second': 'm/s',
  'kilometres per second': 'km/s',
  'kilometers per second': 'km/s',
  'kilograms per second': 'kg/s',
  'per cent': '%',
  percent: '%',
  metre: 'm',
  meter: 'm',
};

const WORDS = Object.keys(SMALL).join('|');
const DIGITS = /(?<![\w.,-])([−-]?\d{1,3}(?:[ ,\u202f\u00a0]\d{3})+(?!\d)|[−-]?\d+(?:\.\d+)?)/;
const ANY = new RegExp(`${DIGITS.source}|\\b(?:an? )?((?:${WORDS})(?:[ -](?:and )?(?:${WORDS}))*)\\b`, 'gi');

/** How many texts are kept: the same sentences and tests are looked at with every change of an input. */
const KEPT = 128;

export const numbersInProse = remembered(numbersOfText, KEPT);

function numbersOfText(text: string): readonly NumberInProse[] {
  const found: (NumberInProse & { readonly at: number })[] = [];
  const taken = (at: number, end: number): boolean =>
    found.some((one) => at < one.at + one.text.length && one.at < end);
  for (const [pattern, part] of PARTS) {
    for (const match of text.matchAll(pattern)) {
      if (taken(match.index, match.index + match[0].length)) continue;
      const value = part === 0 ? SMALL[match[0].split(' ')[0]!.toLowerCase()]! + 0.5 : part;
      const plain = { value, dimension: NUMBER, rounding: ROUNDED * value, share: true, times: true };
      found.push({ at: match.index, text: match[0], ...plain });
    }
  }
  for (const match of text.matchAll(ANY)) {
    const number = match[1] === undefined ? wordsNumber(match[2] ?? '') : digitsNumber(match[1]);
    const end = match.index + match[0].length;
    if (number === null || taken(match.index, end)) continue;
    if (isDecade(match[0], text.slice(end))) continue;
    const unit = unitBehind(text.slice(end));
    if (unit === null && match[1] === undefined) continue;
    found.push({ at: match.index, ...inUnit(match[0], number, unit) });
  }
  return found.sort((a, b) => a.at - b.at).map(({ at: _at, ...number }) => number);
}

/** `1960s`: ten years, no seconds. */
export const isDecade = (digits: string, behind: string): boolean =>
  /^(?:19|20)\d0$/.test(digits) && /^s(?!\p{L})/u.test(behind);

/** Noughts at the end may be rounded ones, but no further than this share: 300 s are not 345 s. As for parts and multiples. */
const ROUNDED = 0.075;

interface Digits {
  readonly value: number;
  readonly rounding: number;
}

function digitsNumber(text: string): Digits {
  const clean = text.replace(/[ ,\u202f\u00a0]/g, '').replace('−', '-');
  const decimals = clean.split('.')[1]?.length ?? 0;
  const zeros = decimals > 0 ? 0 : (/(?<=[1-9])0+$/.exec(clean)?.[0].length ?? 0);
  const value = Number(clean);
  const lastDigit = decimals > 0 ? 0.5 * 10 ** -decimals : 0.5 * 10 ** Math.min(zeros, 2);
  return { value, rounding: zeros === 0 ? lastDigit : Math.min(lastDigit, ROUNDED * Math.abs(value)) };
}

function wordsNumber(text: string): Digits | null {
  const words = text
    .toLowerCase()
    .split(/[ -]/)
    .filter((word) => word !== 'and');
  let [whole, part] = [0, 0];
  for (const word of words) {
    const value = SMALL[word];
    if (value === undefined) return null;
    if (value === 100) part = Math.max(part, 1) * 100;
    else if (value === 1000) [whole, part] = [whole + Math.max(part, 1) * 1000, 0];
    else part += value;
  }
  return digitsNumber(String(whole + part));
}

interface UnitBehind {
  readonly text: string;
  readonly symbol: string;
}

const MULTIPLES = /^\s*times\b/i;

function unitBehind(rest: string): UnitBehind | null {
  if (MULTIPLES.test(rest)) return { text: MULTIPLES.exec(rest)![0], symbol: 'times' };
  const phrase =
    /^[\s\u00a0\u202f-]?\s*(%|°[CFR]?|[\p{L}µ]+(?:(?:\s?[/·]\s?[\p{L}]+[²³]?)|[²³])*)(\s+(?:(?:per|a)\s+(?:cent|second)))?/u.exec(
      rest,
    );
  if (phrase === null) return null;
  const [, first = '', second = ''] = phrase;
  const attempts = [`${first}${second}`, first];
  const head = /^\s*per cent\b/i.exec(rest);
  if (head !== null) return { text: head[0], symbol: '%' };
  for (const attempt of attempts) {
    const symbol = symbolOf(attempt.replace(/\s+/g, ' ').replace(' a second', ' per second').trim());
    if (symbol !== null)
      return { text: phrase[0].slice(0, phrase[0].indexOf(first) + attempt.length), symbol };
  }
  return null;
}

function symbolOf(text: string): string | null {
  const low = text.toLowerCase();
  const said = SAID_UNITS[low] ?? SAID_UNITS[low.replace(/s$/, '')];
  if (said !== undefined) return said;
  // Words such as “in” and “a” are units only by accident.
  if (['in', 'h', 'l', 'g', 'min', 'a'].includes(low)) return null;
  return findUnit(text) === null ? null : text;
}

function inUnit(written: string, { value, rounding }: Digits, behind: UnitBehind | null): NumberInProse {
  if (behind === null) {
    return { text: written, value, dimension: NUMBER, rounding, share: false, times: false };
  }
  const text = `${written}${behind.text}`.trim();
  if (behind.symbol === 'times')
    return { text, value, dimension: NUMBER, rounding, share: true, times: true };
  const unit = findUnit(behind.symbol)!;
  return {
    text,
    value: toSI(value, unit),
    dimension: unit.dimension,
    rounding: (rounding * unit.times) / unit.over,
    share: behind.symbol === '%',
    times: false,
  };
}
