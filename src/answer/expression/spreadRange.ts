/** A range as points: where a test looks, how they are spaced, and what the variable stands for at each. */

import { quote } from '../../study/report.ts';
import type { Bound, Built } from './built.ts';
import { inWords, isNumber, LENGTH, PRESSURE, sameDimension } from './dimensions.ts';
import type { Exponents, RangeKind, RangePlace, TestedRange } from './model.ts';
import { type RangeUse, useOf } from './rangeUse.ts';
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
/** Top [m] of a range of altitudes that goes up to vacuum, which itself is the last point. */
const TOP = 100_000;
/** Ranges whose ends differ by this factor are spaced in equal ratios. */
const WIDE = 10;
/** Altitudes are spaced as u to this power: closer where the air is dense. */
const LOW_END = 1.5;

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
  scope.engines.some((engine) => scope.inputs(engine).some(({ name, whole }) => whole && name === input));

function refuseVariable(node: RangeNode, bound: Bound, { scope }: Workshop): void {
  const { variable } = node;
  if (bound.has(variable) || scope.engines.includes(variable)) {
    refuse(
      node,
      'name-taken',
      `${quote(variable)} ${bound.has(variable) ? 'moves in a range around this one' : 'is an engine of this study'} and cannot name what moves here.`,
      'Take another word, such as z, p or r.',
    );
  }
}

interface Ends {
  readonly from: RangePlace;
  readonly to: RangePlace;
  readonly dimension: Exponents;
  readonly fromWords: string;
  readonly toWords: string;
}

function endsOf(node: RangeNode, shop: Workshop, build: Build): Ends {
  const read = (end: Expression | 'vacuum'): Built | 'vacuum' => {
    if (end === 'vacuum') return end;
    const built = build(end, new Map(), shop);
    if (built.constant !== null) return built;
    return refuse(
      end,
      'range-not-fixed',
      'The end of a range is itself computed; only fixed values can stand there.',
      'Write a value such as 0 km, 0.5 bar or 40 %.',
    );
  };
  const [from, to] = [read(node.from), read(node.to)];
  const known = from === 'vacuum' ? to : from;
  if (known === 'vacuum') {
    refuse(node, 'range-empty', 'The range begins and ends in vacuum.', 'Write e.g. from 0 km to vacuum.');
  }
  const zero = known.anyDimension && to !== 'vacuum' ? to.dimension : known.dimension;
  const dimension = zero;
  for (const end of [from, to]) {
    if (end === 'vacuum' || end.anyDimension || sameDimension(end.dimension, dimension)) continue;
    refuse(
      node,
      'range-unlike',
      `The range goes from ${inWords(dimension)} to ${inWords(end.dimension)}.`,
      'Give both ends in units of one kind.',
    );
  }
  const ends = {
    from: from === 'vacuum' ? from : from.constant!,
    to: to === 'vacuum' ? to : to.constant!,
    dimension,
    fromWords: wordsOf(node.from, shop.text),
    toWords: wordsOf(node.to, shop.text),
  };
  return checkEnds(ends, node);
}

const wordsOf = (node: Expression | 'vacuum', text: string): string =>
  node === 'vacuum' ? node : text.slice(node.start, node.end);

function checkEnds(ends: Ends, node: RangeNode): Ends {
  const { from, to, dimension } = ends;
  if (from === to)
    refuse(node, 'range-empty', 'Both ends of the range are the same.', 'Give two different ends.');
  if (from !== 'vacuum' && to !== 'vacuum') return ends;
  if (sameDimension(dimension, PRESSURE)) {
    return { ...ends, from: from === 'vacuum' ? 0 : from, to: to === 'vacuum' ? 0 : to };
  }
  if (!sameDimension(dimension, LENGTH)) {
    refuse(
      node,
      'range-unlike',
      `The range goes from ${inWords(dimension)} to vacuum.`,
      'Only altitudes and outside pressures go up to vacuum.',
    );
  }
  const other = from === 'vacuum' ? to : from;
  if (typeof other === 'number' && other >= TOP) {
    refuse(
      node,
      'range-empty',
      'The range begins above 100 km, where vacuum is taken to begin.',
      'Begin lower.',
    );
  }
  return ends;
}

interface Scale {
  readonly spacing: TestedRange['spacing'];
  /** Value at a share u of the range. */ readonly at: (u: number) => number;
}

function scaleOf({ from, to }: Ends, use: RangeUse): Scale {
  const low = from === 'vacuum' ? TOP : from;
  const high = to === 'vacuum' ? TOP : to;
  const [least, most] = [Math.min(low, high), Math.max(low, high)];
  if (use.of === 'altitude') {
    const up = high > low;
    const at = (u: number): number => least + (most - least) * (up ? u : 1 - u) ** LOW_END;
    return { spacing: 'closer at the low end', at };
  }
  if (use.of === 'pressure' && least === 0) {
    const up = high > low;
    return { spacing: 'closer at the low end', at: (u) => most * (up ? u : 1 - u) ** 2 };
  }
  if (least > 0 && most / least >= WIDE) {
    return { spacing: 'in equal ratios', at: (u) => low * (high / low) ** u };
  }
  return { spacing: 'even', at: (u) => low + (high - low) * u };
}

function pointsOf({ from, to }: Ends, { at }: Scale, count: number): readonly RangePlace[] {
  const vacuum = from === 'vacuum' || to === 'vacuum';
  const steps = count - (vacuum ? 2 : 1);
  const values = Array.from({ length: steps + 1 }, (_, i): RangePlace => at(i / steps));
  // The ends are as written, not as rounded on the way.
  if (typeof from === 'number') values[0] = from;
  if (typeof to === 'number') values[steps] = to;
  if (from === 'vacuum') return ['vacuum', ...values];
  return to === 'vacuum' ? [...values, 'vacuum'] : values;
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
