/** Checks the dimensions of an expression and makes it ready to be worked out. */

import { commonDimension, refuseDegrees } from './alike.ts';
import { buildCall } from './buildCall.ts';
import { buildQuantity } from './buildQuantity.ts';
import { type Bound, type Built, constantOf, readerOf, type Work } from './built.ts';
import { combine, inWords, isNumber, NUMBER, raise, sameDimension, TEMPERATURE } from './dimensions.ts';
import { extremeOf } from './extreme.ts';
import type { Expression, NumberNode, Span } from './tree.ts';
import { refuse } from './trouble.ts';
import { countPart, type Workshop } from './workshop.ts';

type Binary = Extract<Expression, { is: 'binary' }>;

export function buildExpression(node: Expression, bound: Bound, shop: Workshop): Built {
  countPart(shop, node);
  const inside = (of: Expression): Built => buildExpression(of, bound, shop);
  switch (node.is) {
    case 'number':
      return literal(node);
    case 'name':
      return buildQuantity(node, bound, shop, inside);
    case 'negative':
      return negative(inside(node.of), node);
    case 'binary':
      return folded(binary(node, inside(node.left), inside(node.right)), node);
    case 'call':
      return folded(buildCall(node, node.args.map(inside), shop), node);
    case 'extreme':
      return extremeOf(node, bound, shop, buildExpression);
  }
}

function literal(node: NumberNode): Built {
  const { start, end, dimension } = node;
  return {
    ...constantOf(node.value, { start, end, dimension }),
    anyDimension: node.bare && node.value === 0,
    scale: node.degrees ? 'degrees' : 'plain',
  };
}

function negative(of: Built, span: Span): Built {
  if (of.scale === 'degrees') refuseDegrees(of);
  const constant = of.constant === null ? null : -of.constant;
  return {
    ...of,
    ...ends(span),
    constant,
    value: (values) => -of.value(values),
    quantity: null,
    ask: null,
    parts: [of],
  };
}

const ends = ({ start, end }: Span): Span => ({ start, end });

/** Constants are worked out at once; what has no value then never will. */
function folded(built: Built, span: Span): Built {
  if (!built.parts.every((part) => part.constant !== null)) return built;
  const value = built.value([]);
  if (!Number.isFinite(value)) {
    refuse(span, 'arithmetic-without-value', built.fails, 'Change the numbers of this part.');
  }
  const size = built.size([]);
  return { ...built, constant: value, value: () => value, size: () => size, parts: [] };
}

function binary(node: Binary, left: Built, right: Built): Built {
  const base = { quantity: null, ask: null, constant: null, parts: [left, right], ...ends(node) };
  switch (node.operator) {
    case '+':
    case '-':
      return { ...base, ...sum(node.operator, left, right, node) };
    case '*':
    case '/':
      return { ...base, ...product(node.operator, left, right) };
    case '^':
      return { ...base, ...power(left, right) };
  }
}

type Core = Pick<Built, 'dimension' | 'anyDimension' | 'scale' | 'value' | 'size' | 'fails'>;

const TOO_LARGE = 'The result is too large a number.';

function sum(operator: '+' | '-', left: Built, right: Built, span: Span): Core {
  const dimension = commonDimension(left, right, span, operator === '+' ? 'adds' : 'takes');
  const plus = operator === '+';
  const [readLeft, readRight] = [readerOf(left), readerOf(right)];
  return {
    dimension,
    anyDimension: left.anyDimension && right.anyDimension,
    scale: scaleOfSum(plus, left, right, dimension),
    value: plus
      ? (values) => readLeft(values) + readRight(values)
      : (values) => readLeft(values) - readRight(values),
    size: (values) => left.size(values) + right.size(values),
    fails: TOO_LARGE,
  };
}

/** A point on a scale of degrees is no amount: adding to it or taking it twice has no plain meaning. */
function scaleOfSum(plus: boolean, left: Built, right: Built, dimension: Built['dimension']): Built['scale'] {
  if (!sameDimension(dimension, TEMPERATURE)) return 'plain';
  if (left.scale === 'degrees') refuseDegrees(left);
  if (right.scale === 'degrees') refuseDegrees(right);
  if (left.scale === 'difference' && right.scale === 'difference') return 'difference';
  if (plus) return 'plain';
  return left.constant === null && right.constant === null && right.scale === 'plain'
    ? 'difference'
    : 'plain';
}

function product(operator: '*' | '/', left: Built, right: Built): Core {
  for (const side of [left, right]) if (side.scale === 'degrees') refuseDegrees(side);
  const times = operator === '*';
  const [readLeft, readRight] = [readerOf(left), readerOf(right)];
  const value: Work = times
    ? (values) => finite(readLeft(values) * readRight(values))
    : (values) => quotient(readLeft(values), readRight(values));
  const scale = left.scale === 'difference' || right.scale === 'difference' ? 'difference' : 'plain';
  return {
    dimension: combine(left.dimension, right.dimension, times ? 1 : -1),
    anyDimension: false,
    scale,
    value,
    size: times
      ? (values) => left.size(values) * right.size(values)
      : (values) => left.size(values) / Math.abs(right.value(values)),
    fails: times ? TOO_LARGE : 'This divides by zero.',
  };
}

const finite = (x: number): number => (Number.isFinite(x) ? x : Number.NaN);
const quotient = (a: number, b: number): number => (b === 0 ? Number.NaN : finite(a / b));

function power(base: Built, exponent: Built): Core {
  if (base.scale === 'degrees') refuseDegrees(base);
  if (!isNumber(exponent.dimension)) {
    refuse(
      exponent,
      'exponent-with-unit',
      `The exponent is ${inWords(exponent.dimension)}; only a plain number can be one.`,
      'Divide it by a quantity of its own kind first.',
    );
  }
  if (!isNumber(base.dimension) && exponent.constant === null) {
    refuse(
      exponent,
      'exponent-not-fixed',
      `${inWords(base.dimension)} is raised to a power that is not a fixed number, so its kind is not known.`.replace(
        /^a/,
        'A',
      ),
      'Write the exponent as a number, or divide the base by a quantity of its own kind first.',
    );
  }
  const raised = (b: number, e: number): number => finite(b ** e);
  return {
    dimension: isNumber(base.dimension) ? NUMBER : raise(base.dimension, exponent.constant ?? 1),
    anyDimension: false,
    scale: 'plain',
    value: (values) => raised(base.value(values), exponent.value(values)),
    size: (values) => {
      const whole = raised(base.size(values), exponent.value(values));
      return Number.isFinite(whole) ? whole : Math.abs(raised(base.value(values), exponent.value(values)));
    },
    fails: 'This power has no value: its base is negative or zero, or the result is too large.',
  };
}
