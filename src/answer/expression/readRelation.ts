/** Reads what is said of an expression: compared, about, between, rising, highest somewhere. */

import { ABOUT, LESS, MORE, ORDERS, type Order, ROUGHLY } from './comparatives.ts';
import { shareStands } from './multiples.ts';
import { asExpression, type ReadAny, readSum as readSumOf } from './readExpression.ts';
import { EXTREMES, extremeHere, readPlace } from './readExtreme.ts';
import {
  expectWords,
  type Reader,
  refuseHere,
  signAt,
  spanFrom,
  standsHere,
  takeOneOf,
  takeSign,
  takeWords,
} from './reader.ts';
import { plainNumber, readNumber } from './readNumber.ts';
import { readRange } from './readRange.ts';
import type { Expression, Node, Span, Test, Trend } from './tree.ts';
import { refuse } from './trouble.ts';

const TRENDS: readonly (readonly [string, Trend])[] = [
  ...['rises', 'grows', 'increases'].map((word) => [word, 'rises'] as const),
  ...['falls', 'drops', 'decreases'].map((word) => [word, 'falls'] as const),
  ...['rise', 'grow', 'increase'].map((word) => [`does not ${word}`, 'does not rise'] as const),
  ...['fall', 'drop', 'decrease'].map((word) => [`does not ${word}`, 'does not fall'] as const),
  ...['rises', 'grows', 'increases'].map((word) => [`never ${word}`, 'does not rise'] as const),
  ...['falls', 'drops', 'decreases'].map((word) => [`never ${word}`, 'does not fall'] as const),
];

const VERBS = ['is', 'are', 'stays', 'remains'].map((verb) => [verb, verb] as const);

export function readRelation(reader: Reader, any: ReadAny): Node {
  const left = readSumOf(reader, any);
  const sum = (): Expression => asExpression(readSumOf(reader, any));
  const said = saidOf(reader, left, sum);
  return said ?? left;
}

function saidOf(reader: Reader, node: Node, sum: () => Expression): Test | null {
  const sign = signAt(reader);
  if (sign !== null && ['<', '<=', '>', '>=', '≈', '=', '==', '!='].includes(sign)) {
    return readSigns(reader, asExpression(node), sum);
  }
  const trend = takeOneOf(reader, TRENDS);
  if (trend !== null) return readTrend(reader, trend, asExpression(node), sum);
  if (takeWords(reader, 'exceeds')) return compare('>', asExpression(node), readAmount(reader, sum));
  if (takeWords(reader, 'differs from')) return readApart(reader, asExpression(node), sum);
  if (takeWords(reader, 'has its')) {
    const kind = extremeHere(reader);
    expectWords(reader, ['value'], 'behind highest or lowest', 'has its highest value for …');
    return readPlace(reader, kind, asExpression(node), sum);
  }
  if (takeOneOf(reader, VERBS) !== null) return readIs(reader, asExpression(node), sum);
  return null;
}

const compare = (operator: Order, left: Expression, right: Expression): Test => ({
  is: 'compare',
  operator,
  left,
  right,
  start: left.start,
  end: right.end,
});

/** `a < b`, and chains such as `1 bar < a < 2 bar`. */
function readSigns(reader: Reader, left: Expression, sum: () => Expression): Test {
  if (signAt(reader) === '!=') {
    refuseHere(
      reader,
      '!= has no meaning here: computed numbers are never quite equal.',
      'Write differs from … by more than 1 %.',
    );
  }
  if (takeSign(reader, '≈') !== null) return about(left, sum(), shareOf(ABOUT, left));
  if (takeSign(reader, '=', '==') !== null) return readTolerance(reader, left, sum(), sum);
  const parts: Test[] = [];
  let last = left;
  for (;;) {
    const operator = takeSign(reader, '<', '<=', '>', '>=');
    if (operator === null) break;
    const right = readAmount(reader, sum);
    parts.push(compare(operator as Order, last, right));
    last = right;
  }
  if (parts.length === 1) return parts[0]!;
  return { is: 'and', parts, start: left.start, end: last.end };
}

/** A value, or `3 % more than …`, `2 s less than …`. */
function readAmount(reader: Reader, sum: () => Expression): Expression {
  const amount = sum();
  const more = MORE.some((word) => takeWords(reader, `${word} than`));
  const less = !more && LESS.some((word) => takeWords(reader, `${word} than`));
  if (!more && !less) return amount;
  const base = sum();
  const span = { start: amount.start, end: base.end };
  if (amount.is === 'number' && amount.percent) {
    const factor = plainNumber(more ? 1 + amount.value : 1 - amount.value, amount);
    return { is: 'binary', operator: '*', left: factor, right: base, ...span };
  }
  return { is: 'binary', operator: more ? '+' : '-', left: base, right: amount, ...span };
}

const about = (left: Expression, right: Expression, tolerance: Expression): Test => ({
  is: 'about',
  left,
  right,
  tolerance,
  start: left.start,
  end: Math.max(right.end, tolerance.end),
});

const shareOf = (share: number, { start }: Span): Expression =>
  plainNumber(share, { start, end: start }, true);

/** `… within 2 %` behind an equality that needs it. */
function readTolerance(reader: Reader, left: Expression, right: Expression, sum: () => Expression): Test {
  if (takeWords(reader, 'within')) return about(left, right, sum());
  return refuse(
    { start: left.start, end: right.end },
    'equality-without-tolerance',
    'A computed number is never exactly equal to another.',
    'Write is about … (5 %), is roughly … (20 %), or put within 2 % or within 3 s behind it.',
  );
}

/** What stands behind `is`. */
function readIs(reader: Reader, left: Expression, sum: () => Expression): Test {
  const { start } = left;
  if (takeWords(reader, 'not')) {
    const of = readIs(reader, left, sum);
    return { is: 'not', of, start, end: of.end };
  }
  const order = takeOneOf(reader, ORDERS);
  if (order !== null) return compare(order, left, readAmount(reader, sum));
  if (takeWords(reader, 'about') || takeWords(reader, 'around')) return orWithin(reader, left, ABOUT, sum);
  if (takeWords(reader, 'roughly')) return orWithin(reader, left, ROUGHLY, sum);
  if (takeWords(reader, 'between')) return readBetween(reader, left, sum);
  if (takeWords(reader, 'constant')) return readTrend(reader, 'constant', left, sum);
  if (takeWords(reader, 'within')) {
    // Here the share is the tolerance itself, not so much of what follows.
    const tolerance = shareStands(reader) ? readNumber(reader) : sum();
    expectWords(reader, ['of'], 'behind the tolerance', 'is within 2 % of 340 s');
    return about(left, readAmount(reader, sum), tolerance);
  }
  const extreme = takeOneOf(reader, EXTREMES);
  if (extreme !== null) return readPlace(reader, extreme, left, sum);
  for (const phrase of ['equal to', 'the same as', 'exactly']) takeWords(reader, phrase);
  return readTolerance(reader, left, readAmount(reader, sum), sum);
}

function orWithin(reader: Reader, left: Expression, share: number, sum: () => Expression): Test {
  const right = readAmount(reader, sum);
  return about(left, right, takeWords(reader, 'within') ? sum() : shareOf(share, right));
}

function readBetween(reader: Reader, left: Expression, sum: () => Expression): Test {
  const low = readAmount(reader, sum);
  expectWords(reader, ['and'], 'between the two limits', 'is between 3 % and 5 %');
  const high = readAmount(reader, sum);
  const parts = [compare('>=', left, low), compare('<=', left, high)];
  return { is: 'and', parts, start: left.start, end: high.end };
}

/** `differs from b by more than 3 s` */
function readApart(reader: Reader, left: Expression, sum: () => Expression): Test {
  const right = sum();
  expectWords(reader, ['by'], 'behind what it differs from', 'differs from plug.massFlow by less than 2 %');
  const operator = takeOneOf(reader, ORDERS);
  if (operator === null) {
    refuseHere(
      reader,
      `“more than”, “less than”, “at least” or “at most” is expected here, but ${standsHere(reader)}.`,
      'Write it like differs from plug.massFlow by less than 2 %.',
    );
  }
  const by = sum();
  return { is: 'apart', operator, left, right, by, start: left.start, end: by.end };
}

function readTrend(reader: Reader, trend: Trend, body: Expression, sum: () => Expression): Test {
  const early = trend === 'constant' && takeWords(reader, 'within') ? sum() : null;
  const range = readRange(reader, sum);
  const late = trend === 'constant' && early === null && takeWords(reader, 'within') ? sum() : null;
  const tolerance = early ?? late;
  return { is: 'trend', trend, body, range, tolerance, ...spanFrom(reader, body.start) };
}
