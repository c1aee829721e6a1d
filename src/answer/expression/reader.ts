/** Walks over the tokens of one text: looks ahead, takes words and signs, counts the depth. */

import { listNames, quote } from '../../study/report.ts';
import { cut, type Token } from './tokens.ts';
import type { Span } from './tree.ts';
import { refuse } from './trouble.ts';

/** Deeper brackets than anybody writes. */
const MOST_DEPTH = 60;

export interface Reader {
  readonly text: string;
  readonly tokens: readonly Token[];
  at: number;
  depth: number;
}

export const openText = (text: string): Reader => ({ text, tokens: cut(text), at: 0, depth: 0 });

export const peek = (reader: Reader, ahead = 0): Token =>
  reader.tokens[Math.min(reader.at + ahead, reader.tokens.length - 1)]!;

export function take(reader: Reader): Token {
  const token = peek(reader);
  if (token.is !== 'end') reader.at += 1;
  return token;
}

/** End of the last token taken. */
const lastEnd = (reader: Reader): number => reader.tokens[reader.at - 1]?.end ?? 0;

export const spanFrom = (reader: Reader, start: number): Span => ({ start, end: lastEnd(reader) });

export function wordAt(reader: Reader, ahead = 0): string | null {
  const token = peek(reader, ahead);
  return token.is === 'word' ? token.text : null;
}

export function signAt(reader: Reader, ahead = 0): string | null {
  const token = peek(reader, ahead);
  return token.is === 'sign' ? token.text : null;
}

/** Takes these words if they stand here, one after the other. */
export function takeWords(reader: Reader, phrase: string): boolean {
  const here = wordAt(reader);
  if (here === null || !phrase.startsWith(here)) return false;
  const words = phrase.split(' ');
  if (!words.every((word, i) => wordAt(reader, i) === word)) return false;
  reader.at += words.length;
  return true;
}

/** Takes the first of these phrases that stands here. */
export function takeOneOf<T>(reader: Reader, phrases: readonly (readonly [string, T])[]): T | null {
  for (const [phrase, means] of phrases) if (takeWords(reader, phrase)) return means;
  return null;
}

export function takeSign(reader: Reader, ...signs: readonly string[]): string | null {
  const sign = signAt(reader);
  if (sign === null || !signs.includes(sign)) return null;
  reader.at += 1;
  return sign;
}

/** What stands here, for a message. */
export function found(reader: Reader): string {
  const token = peek(reader);
  return token.is === 'end' ? 'the text ends' : quote(reader.text.slice(token.start, token.end));
}

export function expectSign(reader: Reader, sign: string, after: string): void {
  if (takeSign(reader, sign) !== null) return;
  refuseHere(
    reader,
    `${quote(sign)} is expected ${after}, but ${standsHere(reader)}.`,
    `Write ${sign} here.`,
  );
}

export function expectWords(
  reader: Reader,
  phrases: readonly string[],
  after: string,
  example: string,
): string {
  for (const phrase of phrases) if (takeWords(reader, phrase)) return phrase;
  return refuseHere(
    reader,
    `${listNames(phrases.map((phrase) => quote(phrase)))} is expected ${after}, but ${standsHere(reader)}.`,
    `Write it like ${example}.`,
  );
}

export const standsHere = (reader: Reader): string =>
  peek(reader).is === 'end' ? 'the text ends' : `${found(reader)} stands here`;

export function refuseHere(reader: Reader, what: string, mend: string, code = 'text-unreadable'): never {
  return refuse(peek(reader), code, what, mend);
}

/** Runs `read` one bracket deeper. */
export function deeper<T>(reader: Reader, read: () => T): T {
  reader.depth += 1;
  if (reader.depth > MOST_DEPTH) {
    refuseHere(
      reader,
      `Brackets and words are nested more than ${MOST_DEPTH} deep here.`,
      'Split the test into several sentences.',
      'nested-too-deep',
    );
  }
  const value = read();
  reader.depth -= 1;
  return value;
}
