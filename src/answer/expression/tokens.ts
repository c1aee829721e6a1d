/** A text cut into numbers with their units, words and signs, each with its place. */

import { quote } from '../../study/report.ts';
import { findUnit } from '../../study/units.ts';
import type { Unit } from '../../study/unitTable.ts';
import type { Span } from './tree.ts';
import { refuse } from './trouble.ts';

export type Token = Span &
  (
    | { readonly is: 'number'; readonly value: number; readonly unit: Unit | null; readonly percent: boolean }
    /** A name with its dots, or a plain word. */
    | { readonly is: 'word'; readonly text: string }
    | { readonly is: 'sign'; readonly text: string }
    | { readonly is: 'end' }
  );

/** A longer text is no test: the longest sentence is read aloud in less. */
const MOST_SIGNS = 4000;

const SPACE = /[\s\u00a0\u2007\u2009\u200a\u202f]+/y;
const NUMBER = /(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?/y;
const WORD = /[A-Za-z_][A-Za-z0-9_]*(?:\.[A-Za-z_][A-Za-z0-9_]*)*/y;
const SIGN = /<=|>=|==|!=|&&|\|\||\*\*|[-+*/^(),<>=:²³≤≥≈~−×·÷!;]/y;
/** One factor of a unit with its power, e.g. `m`, `cm^2`, `m³`. A name that goes on or is called is none. */
const UNIT = /(?:°[A-Za-z]?|%|[A-Za-zµμ]+)(?:\^[234]|[²³⁴]|[234](?![\d.]))?(?![A-Za-z0-9_(]|\.[A-Za-z_])/y;
const WORDS_FOR_PERCENT = /per ?cent\b/y;
const ABSOLUTE = /[ \u00a0]*(?:absolute|abs|\(a\))(?![A-Za-z0-9_])/y;

const SAME_SIGN: ReadonlyMap<string, string> = new Map([
  ['−', '-'],
  ['×', '*'],
  ['·', '*'],
  ['÷', '/'],
  ['≤', '<='],
  ['≥', '>='],
  ['~', '≈'],
]);

/** Words for units that a sentence would use and a study does not. */
const SPOKEN_UNITS: ReadonlyMap<string, string> = new Map([
  ['second', 's'],
  ['seconds', 's'],
  ['minute', 'min'],
  ['minutes', 'min'],
  ['kilometre', 'km'],
  ['kilometres', 'km'],
  ['kilometer', 'km'],
  ['kilometers', 'km'],
  ['kilonewtons', 'kN'],
  ['kilograms', 'kg'],
]);

const matchAt = (pattern: RegExp, text: string, at: number): string | null => {
  pattern.lastIndex = at;
  return pattern.exec(text)?.[0] ?? null;
};

interface FoundUnit {
  readonly unit: Unit;
  readonly percent: boolean;
  readonly end: number;
}

/** The unit behind a number: the longest run of factors that is one. */
function unitAt(text: string, numberEnd: number): FoundUnit | null {
  const start = numberEnd + (matchAt(SPACE, text, numberEnd)?.length ?? 0);
  const spoken = matchAt(WORDS_FOR_PERCENT, text, start);
  if (spoken !== null) return { unit: findUnit('%')!, percent: true, end: start + spoken.length };
  let found: FoundUnit | null = null;
  let end = start;
  for (;;) {
    const factor = matchAt(UNIT, text, end);
    if (factor === null) break;
    end += factor.length;
    const written = text.slice(start, end);
    const unit = findUnit(SPOKEN_UNITS.get(written) ?? written);
    if (unit === null && found === null) break;
    if (unit !== null) found = { unit, percent: written === '%' || written === 'percent', end };
    if (!/[/·*]/.test(text[end] ?? '')) break;
    end += 1;
  }
  if (found === null) return null;
  const absolute = isPressure(found.unit) ? matchAt(ABSOLUTE, text, found.end) : null;
  return absolute === null ? found : { ...found, end: found.end + absolute.length };
}

const isPressure = ({ dimension }: Unit): boolean => dimension.join() === '1,-1,-2,0,0,0';

/** Refuses a text that is too long, and signs that have no meaning outside a part's name. */
export function cut(text: string): readonly Token[] {
  if (text.length > MOST_SIGNS) {
    refuse(
      { start: MOST_SIGNS, end: text.length },
      'text-too-long',
      `The text has ${text.length} signs; up to ${MOST_SIGNS} are read.`,
      'Split it into several sentences, each with its own test.',
    );
  }
  const tokens: Token[] = [];
  let at = 0;
  while (at < text.length) {
    const space = matchAt(SPACE, text, at);
    if (space !== null) {
      at += space.length;
      continue;
    }
    const token = tokenAt(text, at);
    tokens.push(token);
    at = token.end;
  }
  tokens.push({ is: 'end', start: text.length, end: text.length });
  return tokens;
}

function tokenAt(text: string, start: number): Token {
  const digits = matchAt(NUMBER, text, start);
  if (digits !== null) return numberAt(text, start, digits);
  const word = matchAt(WORD, text, start);
  if (word !== null) return { is: 'word', text: word, start, end: start + word.length };
  const sign = matchAt(SIGN, text, start);
  if (sign !== null)
    return { is: 'sign', text: SAME_SIGN.get(sign) ?? sign, start, end: start + sign.length };
  const stray = String.fromCodePoint(text.codePointAt(start)!);
  return { is: 'sign', text: stray, start, end: start + stray.length };
}

function numberAt(text: string, start: number, digits: string): Token {
  const value = Number(digits);
  const end = start + digits.length;
  if (!Number.isFinite(value)) {
    refuse(
      { start, end },
      'number-not-finite',
      `${quote(digits)} is too large a number.`,
      'Write a smaller one.',
    );
  }
  const found = unitAt(text, end);
  if (found === null) return { is: 'number', value, unit: null, percent: false, start, end };
  return { is: 'number', value, unit: found.unit, percent: found.percent, start, end: found.end };
}
