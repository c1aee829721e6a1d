/** Where the highest or lowest value of an expression lies over a range. */

import { type Built, told, type Work } from './built.ts';
import type { BuiltTest } from './builtTest.ts';
import { inWords, sameDimension } from './dimensions.ts';
import { peakOf } from './extreme.ts';
import type { Exponents } from './model.ts';
import type { Spread } from './spreadRange.ts';
import type { Span, Test } from './tree.ts';
import { ofMargin } from './trend.ts';
import { refuse } from './trouble.ts';

type PlaceNode = Extract<Test, { is: 'extremePlace' }>;

export type BuiltLimit = Built | 'vacuum' | null;

/** The place of the highest or lowest value lies between two limits. */
export function placeTest(
  node: PlaceNode,
  bodies: readonly Built[],
  spread: Spread,
  low: BuiltLimit,
  high: BuiltLimit,
  text: string,
): BuiltTest {
  const peak = peakOf(node.kind, bodies, spread.vacuumAt);
  const [least, most] = [limitOf(low, spread.dimension, node), limitOf(high, spread.dimension, node)];
  const finitePoints = spread.points.filter((point): point is number => point !== 'vacuum');
  const width = Math.abs(finitePoints.at(-1)! - finitePoints[0]!);
  const placeAt: Work = (values) => spread.valueAt(peak.place(values));
  const margin: Work = (values) => {
    const place = placeAt(values);
    if (Number.isNaN(place)) return place;
    const above = least === null ? 1 : within((place - least) / width);
    const below = most === null ? 1 : within(most === place ? 1 : (most - place) / width);
    return Math.min(above, below);
  };
  return ofMargin(margin, bodies, text, (values, { sides, witnesses }) => {
    const index = peak.index(values);
    if (index < 0) return;
    const place = placeAt(values);
    const limit = least !== null && place < least ? least : most;
    const fixed = { expression: '', quantity: null, ask: null, fixed: true };
    sides.push({
      names: { left: { ...fixed, expression: node.range.variable, fixed: false }, right: fixed },
      text: text.slice(node.start, node.end),
      left: told(place),
      right: limit === null ? least : told(limit),
      operator: limit === most && most !== null ? '<=' : '>=',
      tolerance: null,
      dimension: spread.dimension,
      margin: margin(values),
    });
    witnesses.push({
      range: spread.range,
      variable: node.range.variable,
      place: told(place) ?? 'vacuum',
      is: 'place of the value',
    });
  });
}

const within = (x: number): number => Math.min(1, Math.max(-1, x));

function limitOf(limit: BuiltLimit, dimension: Exponents, node: PlaceNode): number | null {
  if (limit === null) return null;
  if (limit === 'vacuum') return Number.POSITIVE_INFINITY;
  const at: Span = { start: limit.start, end: limit.end };
  if (limit.constant === null) {
    refuse(
      at,
      'place-not-fixed',
      'This limit is itself computed; only fixed values can stand there.',
      'Write a value such as 3.2 or 20 km.',
    );
  }
  if (!limit.anyDimension && !sameDimension(limit.dimension, dimension)) {
    refuse(
      at,
      'compares-unlike',
      `${node.range.variable} is ${inWords(dimension)}, but this limit is ${inWords(limit.dimension)}.`,
      'Give the limit in a unit of what moves.',
    );
  }
  return limit.constant;
}
