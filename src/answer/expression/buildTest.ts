/** Makes a test ready to be decided: comparisons joined by and, or, not, over ranges. */

import { buildExpression } from './buildExpression.ts';
import type { Bound, Built } from './built.ts';
import { allOf, anyOf, type BuiltTest, type Findings, mostTelling, opposite } from './builtTest.ts';
import { compareAbout, compareApart, compareSides, numbersOf } from './compare.ts';
import type { AskedValues, NamedNumber, Witness } from './model.ts';
import { placeTest } from './placeTest.ts';
import { around, type Spread, spreadRange } from './spreadRange.ts';
import type { Expression, Node, Test } from './tree.ts';
import { trendTest } from './trend.ts';
import { countPart, type Workshop } from './workshop.ts';

interface Yard extends Workshop {
  readonly numbers: NamedNumber[];
}

export function buildTest(node: Test, bound: Bound, shop: Yard): BuiltTest {
  countPart(shop, node);
  const number = (of: Expression): Built => buildExpression(of, bound, shop);
  switch (node.is) {
    case 'compare':
      return withNumbers([number(node.left), number(node.right)], bound, shop, ([left, right]) =>
        compareSides(node, left!, right!, shop),
      );
    case 'about':
      return withNumbers([number(node.left), number(node.right)], bound, shop, ([left, right]) =>
        compareAbout(node, left!, right!, number(node.tolerance), shop),
      );
    case 'apart':
      return withNumbers([number(node.left), number(node.right)], bound, shop, ([left, right]) =>
        compareApart(node, left!, right!, number(node.by), shop),
      );
    case 'and':
    case 'or':
      return joined(
        node.is,
        node.parts.map((part) => buildTest(part, bound, shop)),
      );
    case 'not':
      return opposite(buildTest(node.of, bound, shop));
    case 'quantified':
      return quantified(node, bound, shop);
    case 'trend': {
      const { spread, bodies } = spreadBody(node, node.trend, bound, shop);
      const tolerance = node.tolerance === null ? null : number(node.tolerance);
      return trendTest(node, bodies, spread, tolerance, shop.text);
    }
    case 'extremePlace': {
      const { spread, bodies } = spreadBody(node, node.kind, bound, shop);
      const limit = (of: typeof node.low) => (of === null || of === 'vacuum' ? of : number(of));
      return placeTest(node, bodies, spread, limit(node.low), limit(node.high), shop.text);
    }
  }
}

/** Numbers are told of comparisons outside ranges; inside one there are as many as points. */
function withNumbers(
  sides: readonly Built[],
  bound: Bound,
  shop: Yard,
  build: (sides: readonly Built[]) => BuiltTest,
): BuiltTest {
  const test = build(sides);
  if (bound.size > 0) return test;
  for (const number of numbersOf(sides, shop.text)) {
    if (!shop.numbers.some((known) => known.expression === number.expression)) shop.numbers.push(number);
  }
  return test;
}

function joined(join: 'and' | 'or', parts: readonly BuiltTest[]): BuiltTest {
  return {
    ...(join === 'and' ? allOf(parts) : anyOf(parts)),
    explain: (values, into) => {
      for (const part of parts) part.explain(values, into);
    },
  };
}

function spreadBody(
  node: Extract<Test, { is: 'trend' | 'extremePlace' }>,
  kind: Parameters<typeof spreadRange>[1],
  bound: Bound,
  shop: Yard,
): { readonly spread: Spread; readonly bodies: readonly Built[] } {
  const spread = spreadRange(node.range, kind, node.body as Node, bound, shop, buildExpression);
  return { spread, bodies: spread.bounds.map((at) => buildExpression(node.body, at, shop)) };
}

function quantified(node: Extract<Test, { is: 'quantified' }>, bound: Bound, shop: Yard): BuiltTest {
  const { quantifier, range, body } = node;
  const spread = spreadRange(range, quantifier, body, bound, shop, buildExpression);
  const bodies = spread.bounds.map((at) => buildTest(body, at, shop));
  const whole = quantifier === 'every' ? allOf(bodies) : anyOf(bodies);
  const decided =
    quantifier === 'none'
      ? opposite({ ...whole, explain: () => undefined })
      : { ...whole, explain: () => undefined };
  const explain = (values: AskedValues, into: Findings): void => {
    // For “every” the point that fails most, or comes closest to it; for “some” and “none” the one that holds best.
    const telling = mostTelling(bodies, values, quantifier === 'every' ? 1 : -1);
    if (telling < 0) return;
    const one = bodies[telling]!.holds(values);
    const is = witnessIs(quantifier, one === true);
    into.witnesses.push({
      range: spread.range,
      variable: range.variable,
      place: spread.points[telling]!,
      is,
      around: around(spread.points, telling, (i) => bodies[i]!.holds(values) === one),
    });
    bodies[telling]!.explain(values, into);
  };
  return { ...decided, explain };
}

function witnessIs(quantifier: 'every' | 'some' | 'none', holdsThere: boolean): Witness['is'] {
  if (quantifier === 'every') return holdsThere ? 'closest call' : 'counterexample';
  if (!holdsThere) return 'closest call';
  return quantifier === 'some' ? 'example' : 'counterexample';
}
