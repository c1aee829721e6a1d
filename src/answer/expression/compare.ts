/** Comparisons: `a < b`, `a is about b`, `a differs from b by more than c`. */

import { commonDimension } from './alike.ts';
import { absentIn, type Built, namedNumber, readerOf, sizeOf, told, type Work } from './built.ts';
import type { BuiltTest } from './builtTest.ts';
import { inWords, isNumber, sameDimension } from './dimensions.ts';
import type { AskedValues, ComparisonOperator, NamedNumber, SideNamed } from './model.ts';
import type { Expression, Span, Test } from './tree.ts';
import { refuse } from './trouble.ts';
import type { Workshop } from './workshop.ts';

type Order = '<' | '<=' | '>' | '>=';

/** How far the sides may be apart [SI]: an amount, or a share of the right one. */
export interface Tolerance {
  readonly of: Pick<Built, 'ask' | 'constant' | 'value'>;
  readonly isShare: boolean;
}

export function toleranceAt({ of, isShare }: Tolerance): (values: AskedValues, right: number) => number {
  const read = readerOf(of);
  return (values, right) => (isShare ? read(values) * Math.abs(right) : read(values));
}

const isBareAgainstZero = (left: Built, right: Built): boolean =>
  (right.constant === 0 && left.ask !== null) || (left.constant === 0 && right.ask !== null);

/** Refuses to compare a pressure with a speed, and a difference with a point on a scale of degrees. */
function comparable(left: Built, right: Built, span: Span): void {
  commonDimension(left, right, span, 'compares');
  const scales = [left.scale, right.scale];
  if (!scales.includes('degrees') || !scales.includes('difference')) return;
  refuse(
    span,
    'difference-with-degrees',
    'This compares a difference of temperatures with a temperature on a scale of degrees.',
    'Write the difference in kelvin: a difference of 20 °C is 20 K.',
  );
}

const LESS: ReadonlySet<Order> = new Set(['<', '<=']);

function ordered(operator: Order, l: number, r: number): boolean {
  switch (operator) {
    case '<':
      return l < r;
    case '<=':
      return l <= r;
    case '>':
      return l > r;
    case '>=':
      return l >= r;
  }
}

interface Sides {
  readonly span: Span;
  readonly left: Built;
  readonly right: Built;
  /** Null: the sides themselves are put in order; else how far they are apart, and the tolerance. */
  readonly tolerance: Tolerance | null;
  readonly order: Order;
  /** As told. */ readonly operator: ComparisonOperator;
}

/**
 * The margin is the difference over the size of what is compared; a bare number against nothing is held against 1 SI unit. Plain
 * steps, without a call for each: this runs for every draw.
 */
function comparison({ span, left, right, tolerance, order, operator }: Sides, text: string): BuiltTest {
  const [readLeft, readRight] = [readerOf(left), readerOf(right)];
  const allowed = tolerance === null ? null : toleranceAt(tolerance);
  const rest = isBareAgainstZero(left, right) ? 1 : 0;
  const sign = LESS.has(order) ? -1 : 1;
  const margin: Work = (values) => {
    const l = readLeft(values);
    const r = readRight(values);
    const apart = sign * (allowed === null ? l - r : Math.abs(l - r) - allowed(values, r));
    if (apart === 0) return 0;
    if (!Number.isFinite(apart)) return Number.NaN;
    const size = sizeOf(left, values, l) + sizeOf(right, values, r) + rest;
    return Number.isFinite(size) && size > 0 ? apart / size : Math.sign(apart);
  };
  return {
    holds: (values) => {
      const l = readLeft(values);
      const r = readRight(values);
      const distance = Math.abs(l - r);
      const most = allowed === null ? 0 : allowed(values, r);
      if (!Number.isFinite(most - distance)) return null;
      return allowed === null ? ordered(order, l, r) : ordered(order, distance, most);
    },
    margin,
    absent: (values) => absentIn(left, values, text) ?? absentIn(right, values, text),
    explain: (values, { sides }) => {
      const r = readRight(values);
      sides.push({
        names: { left: sideNamed(left, text), right: sideNamed(right, text) },
        text: text.slice(span.start, span.end),
        left: told(readLeft(values)),
        right: told(r),
        operator,
        tolerance: allowed === null ? null : told(allowed(values, r)),
        dimension: left.anyDimension ? right.dimension : left.dimension,
        margin: told(margin(values)),
      });
    },
  };
}

/** What stands on one side, as told of a decision. */
export const sideNamed = ({ start, end, quantity, ask, constant }: Built, text: string): SideNamed => ({
  expression: text.slice(start, end),
  quantity,
  ask,
  fixed: constant !== null,
});

export function compareSides(
  node: Extract<Test, { is: 'compare' }>,
  left: Built,
  right: Built,
  { text }: Workshop,
): BuiltTest {
  comparable(left, right, node);
  const { operator } = node;
  return comparison({ span: node, left, right, tolerance: null, order: operator, operator }, text);
}

/** How far the left side may be from the right one: a share of the right side, or an amount. */
export function toleranceOf(node: Expression, built: Built, right: Built): Tolerance {
  if (isNumber(built.dimension) && !built.anyDimension) {
    const amount = node.is === 'number' && node.bare && isNumber(right.dimension);
    return { of: built, isShare: !amount };
  }
  if (!built.anyDimension && !sameDimension(built.dimension, right.dimension) && !right.anyDimension) {
    refuse(
      node,
      'tolerance-unlike',
      `The tolerance is ${inWords(built.dimension)}, but ${inWords(right.dimension)} is compared.`,
      'Give it as a share, e.g. within 2 %, or in a unit of what is compared.',
    );
  }
  // A tolerance in °C is a difference: the zero of the scale does not enter.
  if (node.is === 'number' && node.degrees) {
    return { of: { ...built, constant: node.asDifference }, isShare: false };
  }
  return { of: built, isShare: false };
}

export function compareAbout(
  node: Extract<Test, { is: 'about' }>,
  left: Built,
  right: Built,
  tolerance: Built,
  { text }: Workshop,
): BuiltTest {
  comparable(left, right, node);
  const allowed = toleranceOf(node.tolerance, tolerance, right);
  return comparison({ span: node, left, right, tolerance: allowed, order: '<=', operator: 'about' }, text);
}

/** `a differs from b by more than c` */
export function compareApart(
  node: Extract<Test, { is: 'apart' }>,
  left: Built,
  right: Built,
  by: Built,
  { text }: Workshop,
): BuiltTest {
  comparable(left, right, node);
  const allowed = toleranceOf(node.by, by, right);
  const { operator: order } = node;
  const operator = LESS.has(order) ? 'about' : 'not about';
  return comparison({ span: node, left, right, tolerance: allowed, order, operator }, text);
}

/** The numbers that a comparison brings: sides made of several, then every number asked for. */
export function numbersOf(sides: readonly Built[], text: string): readonly NamedNumber[] {
  const asked = (built: Built): readonly Built[] =>
    built.ask !== null ? [built] : built.parts.flatMap(asked);
  const composed = sides.filter((side) => side.constant === null && side.ask === null);
  return [...composed, ...sides.flatMap(asked)].map((built) => namedNumber(built, text));
}
