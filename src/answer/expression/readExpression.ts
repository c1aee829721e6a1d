/** Reads sums, products, powers, plain multiples (`twice`, `a third of`), names and numbers. */

import { quote } from '../../study/report.ts';
import { multipleAt } from './multiples.ts';
import { readArguments } from './readArguments.ts';
import {
  deeper,
  expectSign,
  peek,
  type Reader,
  refuseHere,
  signAt,
  spanFrom,
  standsHere,
  take,
  takeSign,
  wordAt,
} from './reader.ts';
import { plainNumber, readNumber } from './readNumber.ts';
import { readRange } from './readRange.ts';
import { type Expression, isTest, type Node } from './tree.ts';
import { refuse } from './trouble.ts';
import { FUNCTIONS, isKeyword, OTHER_FUNCTIONS, RANGE_FUNCTIONS } from './vocabulary.ts';

/** How a bracket reads what stands inside: given by the door, since a test may stand in brackets. */
export type ReadAny = (reader: Reader) => Node;

/** Refuses a yes-or-no where a number is needed. */
export function asExpression(node: Node): Expression {
  if (!isTest(node)) return node;
  return refuse(
    node,
    'test-for-number',
    'Here a number is needed, but this part is a test that holds or does not.',
    'Compare numbers with each other, and join tests with and, or, not.',
  );
}

export function readSum(reader: Reader, any: ReadAny): Node {
  let left = readProduct(reader, any);
  for (;;) {
    const operator = takeSign(reader, '+', '-');
    if (operator === null) return left;
    const right = asExpression(readProduct(reader, any));
    left = binary(operator as '+' | '-', asExpression(left), right);
  }
}

const binary = (operator: '+' | '-' | '*' | '/' | '^', left: Expression, right: Expression): Expression => ({
  is: 'binary',
  operator,
  left,
  right,
  start: left.start,
  end: right.end,
});

function readProduct(reader: Reader, any: ReadAny): Node {
  let left = readSigned(reader, any);
  for (;;) {
    const operator = takeSign(reader, '*', '/');
    if (operator === null) return left;
    const right = asExpression(readSigned(reader, any));
    left = binary(operator as '*' | '/', asExpression(left), right);
  }
}

/** `-x`, `twice x`, `a third of x`, `2.5 times x`: they bind like a factor, the power binds tighter. */
function readSigned(reader: Reader, any: ReadAny): Node {
  const { start } = peek(reader);
  if (takeSign(reader, '+') !== null) return deeper(reader, () => asExpression(readSigned(reader, any)));
  if (takeSign(reader, '-') !== null) {
    const of = deeper(reader, () => asExpression(readSigned(reader, any)));
    return { is: 'negative', of, start, end: of.end };
  }
  const multiple = multipleAt(reader);
  if (multiple === null) return readPower(reader, any);
  const factor = plainNumber(multiple, spanFrom(reader, start));
  return binary(
    '*',
    factor,
    deeper(reader, () => asExpression(readSigned(reader, any))),
  );
}

function readPower(reader: Reader, any: ReadAny): Node {
  const base = readPrimary(reader, any);
  const raised = takeSign(reader, '²', '³');
  if (raised !== null) {
    const exponent = plainNumber(raised === '²' ? 2 : 3, spanFrom(reader, peek(reader).start));
    return { ...binary('^', asExpression(base), exponent), end: spanFrom(reader, 0).end };
  }
  if (takeSign(reader, '^') === null) return base;
  // A power of a power is read from the right, as in algebra.
  const exponent = deeper(reader, () => asExpression(readExponent(reader, any)));
  return binary('^', asExpression(base), exponent);
}

function readExponent(reader: Reader, any: ReadAny): Node {
  const { start } = peek(reader);
  if (takeSign(reader, '-') === null) return readPower(reader, any);
  const of = deeper(reader, () => asExpression(readExponent(reader, any)));
  return { is: 'negative', of, start, end: of.end };
}

function readPrimary(reader: Reader, any: ReadAny): Node {
  const token = peek(reader);
  if (token.is === 'number') return readNumber(reader);
  if (takeSign(reader, '(') !== null) {
    const inside = deeper(reader, () => any(reader));
    expectSign(reader, ')', 'behind what stands in the brackets');
    return { ...inside, ...spanFrom(reader, token.start) };
  }
  const word = wordAt(reader);
  if (word !== null && !isKeyword(word)) return readName(reader, word, any);
  return refuseHere(
    reader,
    `A number or a quantity is expected here, but ${standsHere(reader)}.`,
    'Write a quantity such as bell.thrust(vacuum), or a number with its unit such as 340 s.',
  );
}

function readName(reader: Reader, name: string, any: ReadAny): Node {
  const token = take(reader);
  const { start } = token;
  if (signAt(reader) !== '(') return { is: 'name', name, args: null, start, end: token.end };
  const ranged = RANGE_FUNCTIONS.get(name);
  if (ranged !== undefined) {
    take(reader);
    const body = deeper(reader, () => asExpression(readSum(reader, any)));
    const range = readRange(reader, (inner) => asExpression(readSum(inner, any)));
    expectSign(reader, ')', 'behind the range');
    return { is: 'extreme', ...ranged, body, range, ...spanFrom(reader, start) };
  }
  if (FUNCTIONS.has(name)) {
    take(reader);
    const args = deeper(reader, () => readList(reader, any));
    expectSign(reader, ')', `behind what ${quote(name)} is taken of`);
    return { is: 'call', name, args, ...spanFrom(reader, start) };
  }
  const other = OTHER_FUNCTIONS.get(name);
  if (other !== undefined) {
    refuse(token, 'function-unknown', `${quote(name)} is not a function here.`, other);
  }
  take(reader);
  const args = deeper(reader, () => readArguments(reader, (inner) => asExpression(readSum(inner, any))));
  return { is: 'name', name, args, ...spanFrom(reader, start) };
}

function readList(reader: Reader, any: ReadAny): Expression[] {
  const list = [asExpression(readSum(reader, any))];
  while (takeSign(reader, ',') !== null) list.push(asExpression(readSum(reader, any)));
  return list;
}
