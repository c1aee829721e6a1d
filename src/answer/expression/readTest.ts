/** Reads a whole test: `and`, `or`, `not`, ranges in front, and what is said of an expression. */

import { asExpression, readSum } from './readExpression.ts';
import {
  deeper,
  expectWords,
  openText,
  peek,
  type Reader,
  refuseHere,
  signAt,
  standsHere,
  takeOneOf,
  takeSign,
  takeWords,
  wordAt,
} from './reader.ts';
import { rangeHere } from './readRange.ts';
import { readRelation } from './readRelation.ts';
import { type Expression, isTest, type Node, type Test } from './tree.ts';
import { refuse } from './trouble.ts';

/** The text as a test. */
export function readTest(text: string): Test {
  const node = readWhole(text, 'a test');
  if (isTest(node)) return node;
  return refuse(
    node,
    'no-comparison',
    'This is a number, not a test: nothing says what it should be.',
    'Compare it with something, e.g. … > 2 s, … is about 340 s, or … rises for z from pad to vacuum.',
  );
}

/** The text as a number. */
export const readExpression = (text: string): Expression => asExpression(readWhole(text, 'an expression'));

function readWhole(text: string, what: string): Node {
  const reader = openText(text);
  if (peek(reader).is === 'end') {
    refuseHere(
      reader,
      `There is no text where ${what} is expected.`,
      'Write e.g. bell.thrust(vacuum) > 800 kN.',
    );
  }
  const node = readEither(reader);
  if (peek(reader).is !== 'end') refuseRest(reader);
  return node;
}

/** What stands behind a finished test or number. */
function refuseRest(reader: Reader): never {
  const sign = signAt(reader);
  const mends: Readonly<Record<string, string>> = {
    '&&': 'Write “and”.',
    '||': 'Write “or”.',
    '!=': 'Write differs from … by more than …: computed numbers are never quite equal.',
    ')': 'Delete it, or open a bracket before.',
    ',': 'A point marks decimals, and nothing is put between thousands: 70000 lbf. Commas stand only between what is in brackets.',
    '**': 'Write ^ for a power.',
  };
  const mend =
    (sign !== null && Object.hasOwn(mends, sign) ? mends[sign] : undefined) ??
    mendOfWord(reader) ??
    'Join two tests with “and” or “or”, two numbers with + − * / ^; or delete it.';
  return refuseHere(reader, `The test could end here, but ${standsHere(reader)}.`, mend);
}

/** Speech that is nearly a test. */
function mendOfWord(reader: Reader): string | null {
  const word = wordAt(reader);
  const before = wordAt(reader, -1);
  if (word === 'for')
    return 'A range stands in front: for every z from pad to vacuum, bell.thrust(z) > 1 kN.';
  if (word === 'by') return 'Put the amount before “than”: a is at least 5 % more than b.';
  if (before !== null && ['always', 'never', 'everywhere'].includes(before))
    return 'Say over which range: for every z from pad to vacuum, bell.thrust(z) > 1 kN.';
  if (word !== null && before !== null && !before.includes('.'))
    return 'An engine and what is asked of it are joined by a dot, and where stands in brackets: bell.thrust(vacuum).';
  return null;
}

const readEither = (reader: Reader): Node => readJoined(reader, 'or');

function readJoined(reader: Reader, join: 'and' | 'or'): Node {
  const next = (): Node => (join === 'or' ? readJoined(reader, 'and') : readNot(reader));
  const first = next();
  if (!takeWords(reader, join)) return first;
  const parts = [asTest(first)];
  do parts.push(asTest(next()));
  while (takeWords(reader, join));
  return { is: join, parts, start: parts[0]!.start, end: parts.at(-1)!.end };
}

function asTest(node: Node): Test {
  if (isTest(node)) return node;
  return refuse(
    node,
    'number-for-test',
    'On this side of and, or, not there is a number, not a test that holds or does not.',
    'Write the comparison out on both sides: a > 1 bar and b > 1 bar.',
  );
}

const QUANTIFIERS = [
  ['for every', 'every'],
  ['for all', 'every'],
  ['for each', 'every'],
  ['for some', 'some'],
  ['for no', 'none'],
  ['there is an', 'some'],
  ['there is a', 'some'],
  ['there is no', 'none'],
  ['there is', 'some'],
] as const;

function readNot(reader: Reader): Node {
  const { start } = peek(reader);
  if (takeWords(reader, 'not')) {
    const of = deeper(reader, () => asTest(readNot(reader)));
    return { is: 'not', of, start, end: of.end };
  }
  const quantifier = takeOneOf(reader, QUANTIFIERS);
  if (quantifier === null) return readRelation(reader, readEither);
  const range = rangeHere(reader, (inner) => asExpression(readSum(inner, readEither)));
  if (takeSign(reader, ':', ',') === null)
    expectWords(
      reader,
      ['where', 'with', 'at which'],
      'behind the range',
      'for every z from 0 km to vacuum: …',
    );
  const body = deeper(reader, () => asTest(readEither(reader)));
  return { is: 'quantified', quantifier, range, body, start, end: body.end };
}
