/** Comparisons: `a < b`, `a is about b`, `a differs from b by more than c`. */

import { commonDimension } from './alike.ts';
import { absentIn, type Built, namedNumber, told, type Work } from './built.ts';
import type { BuiltTest } from './builtTest.ts';
import { inWords, isNumber, sameDimension } from './dimensions.ts';
import type { AskedValues, ComparisonOperator, NamedNumber, SideNamed } from './model.ts';
import type { Expression, Span, Test } from './tree.ts';
import { refuse } from './trouble.ts';
import type { Workshop } from './workshop.ts';

type Order = '<' | '<=' | '>' | '>=';

/** How far the sides may be apart [SI], where the right one is given. */
export type Tolerance = (values: AskedValues, right: number) => number;

const NO_TOLERANCE: Tolerance = () => 0;

/** Difference of two sides over the size of what is compared; a bare number against nothing is held against 1 SI unit. */
function scaled(left: Built, right: Built, difference: Sides['difference'], allowed: Tolerance): Work {
  const rest = isBareAgainstZero(left, right) ? 1 : 0;
  return (values) => {
    const [l, r] = [left.value(values), right.value(values)];
    const apart = difference(l, r, allowed(values, r));
    if (apart === 0) return 0;
    if (!Number.isFinite(apart)) return Number.NaN;
    const size = sizeOf(left, values, l) + sizeOf(right, values, r) + rest;
    return Number.isFinite(size) && size > 0 ? apart / size : Math.sign(apart);
  };
}

/** @param value of it, known already: a number by itself is of its own size */
export const sizeOf = (built: Built, values: AskedValues, value: number): number =>
  built.ask === null ? built.size(values) : Math.abs(value);

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

const LESS = new Set(['<', '<=']);

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
  readonly operator: ComparisonOperator;
  readonly tolerance: Tolerance | null;
  /** Null where a side is absent. */ readonly holds: (l: number, r: number, tolerance: number) => boolean;
  /** Above nothing where it holds. */ readonly difference: (
    l: number,
    r: number,
    tolerance: number,
  ) => number;
}

function comparison(
  { span, left, right, operator, tolerance, holds, difference }: Sides,
  text: string,
): BuiltTest {
  const allowed = tolerance ?? NO_TOLERANCE;
  const margin = scaled(left, right, difference, allowed);
  return {
    holds: (values) => {
      const [l, r] = [left.value(values), right.value(values)];
      const most = allowed(values, r);
      return Number.isFinite(most - Math.abs(l - r)) ? holds(l, r, most) : null;
    },
    margin,
    absent: (values) => absentIn(left, values, text) ?? absentIn(right, values, text),
    explain: (values, { sides }) => {
      sides.push({
        names: { left: sideNamed(left, text), right: sideNamed(right, text) },
        text: text.slice(span.start, span.end),
        left: told(left.value(values)),
        right: told(right.value(values)),
        operator,
        tolerance: tolerance === null ? null : told(tolerance(values, right.value(values))),
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
  const sign = LESS.has(operator) ? -1 : 1;
  const difference = (l: number, r: number): number => sign * (l - r);
  const holds = (l: number, r: number): boolean => ordered(operator, l, r);
  return comparison({ span: node, left, right, operator, tolerance: null, holds, difference }, text);
}

/** How far the left side may be from the right one: a share of the right side, or an amount. */
export function toleranceOf(node: Expression, built: Built, right: Built): Tolerance {
  if (isNumber(built.dimension) && !built.anyDimension) {
    const amount = node.is === 'number' && node.bare && isNumber(right.dimension);
    return amount ? built.value : (values, r) => built.value(values) * Math.abs(r);
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
  if (node.is === 'number' && node.degrees) return () => node.asDifference;
  return built.value;
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
  const difference = (l: number, r: number, most: number): number => most - Math.abs(l - r);
  const holds = (l: number, r: number, most: number): boolean => Math.abs(l - r) <= most;
  return comparison(
    { span: node, left, right, operator: 'about', tolerance: allowed, holds, difference },
    text,
  );
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
  const { operator } = node;
  const less = LESS.has(operator);
  const difference = (l: number, r: number, most: number): number =>
    (less ? 1 : -1) * (most - Math.abs(l - r));
  const holds = (l: number, r: number, most: number): boolean => ordered(operator, Math.abs(l - r), most);
  const shown = less ? 'about' : 'not about';
  return comparison(
    { span: node, left, right, operator: shown, tolerance: allowed, holds, difference },
    text,
  );
}

/** The numbers that a comparison brings: sides made of several, then every number asked for. */
export function numbersOf(sides: readonly Built[], text: string): readonly NamedNumber[] {
  const asked = (built: Built): readonly Built[] =>
    built.ask !== null ? [built] : built.parts.flatMap(asked);
  const composed = sides.filter((side) => side.constant === null && side.ask === null);
  return [...composed, ...sides.flatMap(asked)].map((built) => namedNumber(built, text));
}
