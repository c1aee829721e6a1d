/** Reads `for z from 0 km to vacuum at 65 points`. */

import { quote } from '../../study/report.ts';
import {
  expectWords,
  peek,
  type Reader,
  refuseHere,
  spanFrom,
  standsHere,
  take,
  takeWords,
  wordAt,
} from './reader.ts';
import type { Expression, RangeNode } from './tree.ts';
import { refuse } from './trouble.ts';
import { isTaken } from './vocabulary.ts';

export type ReadExpression = (reader: Reader) => Expression;

const LEAST_POINTS = 3;
const MOST_POINTS = 400;

/** The word `for` and the range behind it. */
export function readRange(reader: Reader, expression: ReadExpression): RangeNode {
  expectWords(reader, ['for', 'as'], 'before the range', '… for z from 0 km to vacuum');
  return rangeHere(reader, expression);
}

export function rangeHere(reader: Reader, expression: ReadExpression): RangeNode {
  const { start } = peek(reader);
  const variable = readVariable(reader);
  expectWords(reader, ['from'], `behind ${quote(variable)}`, `${variable} from 0 km to vacuum`);
  const from = endOfRange(reader, expression);
  expectWords(reader, ['to'], 'between the two ends of the range', `${variable} from 0 km to vacuum`);
  const to = endOfRange(reader, expression);
  const points = wordAt(reader, 1) !== 'which' && takeWords(reader, 'at') ? readPoints(reader) : null;
  return { variable, from, to, points, ...spanFrom(reader, start) };
}

const NOUNS = ['altitude', 'height', 'pressure', 'time', 'throttle', 'value', 'mixture ratio', 'area ratio'];

/** `z`, `altitude z` */
function readVariable(reader: Reader): string {
  const noun = NOUNS.find((words) => takeWords(reader, words));
  if (noun !== undefined && wordAt(reader) === 'from') reader.at -= noun.split(' ').length;
  const word = wordAt(reader);
  if (word === null || word.includes('.')) {
    return refuseHere(
      reader,
      `A name for what moves is expected here, but ${standsHere(reader)}.`,
      'Write it like z from 0 km to vacuum: one word without dots.',
    );
  }
  const token = take(reader);
  if (isTaken(word) || word.startsWith('_')) {
    refuse(
      token,
      'name-taken',
      `${quote(word)} has a meaning of its own and cannot name what moves.`,
      'Take another word, such as z, p or r.',
    );
  }
  return word;
}

/** `vacuum`, `pad`, `sea level` or a value. */
function endOfRange(reader: Reader, expression: ReadExpression): Expression | 'vacuum' {
  if (takeWords(reader, 'vacuum')) return 'vacuum';
  const { start } = peek(reader);
  if (takePad(reader)) return padAt(spanFrom(reader, start));
  return expression(reader);
}

export const takePad = (reader: Reader): boolean =>
  takeWords(reader, 'the pad') || takeWords(reader, 'pad') || takeWords(reader, 'sea level');

const padAt = (span: { readonly start: number; readonly end: number }): Expression => ({
  is: 'number',
  value: 0,
  asDifference: 0,
  dimension: [0, 1, 0, 0, 0, 0],
  degrees: false,
  percent: false,
  bare: false,
  start: span.start,
  end: span.end,
});

function readPoints(reader: Reader): number {
  const token = take(reader);
  const fits = token.is === 'number' && token.unit === null && Number.isInteger(token.value);
  if (fits && token.value >= LEAST_POINTS && token.value <= MOST_POINTS) {
    expectWords(reader, ['points', 'places'], 'behind their number', 'at 65 points');
    return token.value;
  }
  return refuse(
    token,
    'points-unreadable',
    `Behind “at” the number of points is expected: a whole number from ${LEAST_POINTS} to ${MOST_POINTS}.`,
    'Write it like at 65 points, or leave it out.',
  );
}
