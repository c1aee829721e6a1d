/** A range as points: where a test looks, how they are spaced, and what the variable stands for at each. */

import { quote } from '../../study/report.ts';
import type { Bound, Built } from './built.ts';
import { isNumber } from './dimensions.ts';
import type { Exponents, RangeKind, RangePlace, TestedRange } from './model.ts';
import { type Ends, endsOf } from './rangeEnds.ts';
import { type RangeUse, useOf } from './rangeUse.ts';
import { pointsOf, scaleOf } from './spacing.ts';
import type { Expression, Node, RangeNode } from './tree.ts';
import { refuse } from './trouble.ts';
import type { Workshop } from './workshop.ts';

/** From the first to the last point without a gap around the one at `index` that are `alike`. */
export function around(
  points: readonly RangePlace[],
  index: number,
  alike: (index: number) => boolean,
): { readonly from: RangePlace; readonly to: RangePlace } {
  let [first, last] = [index, index];
  while (first > 0 && alike(first - 1)) first -= 1;
  while (last < points.length - 1 && alike(last + 1)) last += 1;
  return { from: points[first]!, to: points[last]! };
}

type Build = (node: Expression, bound: Bound, shop: Workshop) => Built;

export interface Spread {
  /** Index in the ranges of the test. */ readonly range: number;
  readonly points: readonly RangePlace[];
  /** What is bound at each point. */ readonly bounds: readonly Bound[];
  readonly dimension: Exponents;
  /** Index of the point that is vacuum; null where none is. */ readonly vacuumAt: number | null;
  /** Value [SI] at a place on the scale 0, 1, 2 … of the points; infinite in vacuum. */
  readonly valueAt: (place: number) => number;
}

/** Points of a range of places, throttles and plain numbers; and of an input, where each point is another engine. */
const POINTS = 33;
const POINTS_OF_INPUT = 17;

export function spreadRange(
  node: RangeNode,
  kind: RangeKind,
  body: Node,
  bound: Bound,
  shop: Workshop,
  build: Build,
): Spread {
  refuseVariable(node, bound, shop);
  const ends = endsOf(node, shop, build);
  const use = useOf(node, body, ends.dimension);
  const count = node.points ?? (use.of === 'input' ? POINTS_OF_INPUT : POINTS);
  const scale = scaleOf(ends, use);
  const even = pointsOf(ends, scale, count);
  const whole = isWhole(use, shop);
  const points = whole
    ? [...new Set(even.map((place) => (place === 'vacuum' ? place : Math.round(place))))]
    : even;
  const vacuum = points.indexOf('vacuum');
  const inner = new Map(bound);
  const { dimension } = ends;
  return {
    range: rangeIndex(node, { kind, use, ends, points, spacing: scale.spacing }, shop),
    points,
    bounds: points.map((place) => new Map(inner).set(node.variable, { place, dimension })),
    dimension,
    vacuumAt: vacuum < 0 ? null : vacuum,
    valueAt: (place) => {
      if (whole) return points[Math.round(place)] as number;
      if (vacuum >= 0 && place === vacuum) return Number.POSITIVE_INFINITY;
      const first = vacuum === 0 ? 1 : 0;
      const steps = count - (vacuum < 0 ? 1 : 2);
      return scale.at((place - first) / steps);
    },
  };
}

/** An input that is a number of pieces moves in whole steps. */
const isWhole = ({ input }: RangeUse, { scope }: Workshop): boolean =>
  [...scope.engines, ...scope.vehicles].some((engine) =>
    scope.inputs(engine).some(({ name, whole }) => whole && name === input),
  );

function refuseVariable(node: RangeNode, bound: Bound, { scope }: Workshop): void {
  const { variable } = node;
  if (bound.has(variable) || scope.engines.includes(variable) || scope.vehicles.includes(variable)) {
    refuse(
      node,
      'name-taken',
      `${quote(variable)} ${bound.has(variable) ? 'moves in a range around this one' : 'is an engine of this study'} and cannot name what moves here.`,
      'Take another word, such as z, p or r.',
    );
  }
}

interface Told {
  readonly kind: RangeKind;
  readonly use: RangeUse;
  readonly ends: Ends;
  readonly points: readonly RangePlace[];
  readonly spacing: TestedRange['spacing'];
}

function rangeIndex(node: RangeNode, { kind, use, ends, points, spacing }: Told, shop: Workshop): number {
  const known = shop.rangeAt.get(node.start);
  if (known !== undefined) return known;
  const { from, to, dimension, fromWords, toWords } = ends;
  const said = (place: RangePlace, written: string): string =>
    use.of === 'altitude' && place === 0 ? 'the pad' : written;
  const words = `tested at ${points.length} ${use.words} from ${said(from, fromWords)} to ${said(to, toWords)}`;
  const range: TestedRange = {
    variable: node.variable,
    kind,
    of: use.of,
    input: use.input,
    dimension: isNumber(dimension) ? use.dimension : dimension,
    from,
    to,
    points,
    spacing,
    words,
  };
  const index = shop.ranges.push(range) - 1;
  shop.rangeAt.set(node.start, index);
  return index;
}
