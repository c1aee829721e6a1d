/** The highest or lowest value over a range, and where it lies: the best point, refined by a parabola. */

import type { Bound, Built, Work } from './built.ts';
import { type Spread, spreadRange } from './spreadRange.ts';
import type { Expression } from './tree.ts';
import type { Workshop } from './workshop.ts';

type Extreme = Extract<Expression, { is: 'extreme' }>;
type Build = (node: Expression, bound: Bound, shop: Workshop) => Built;

export interface Peak {
  /** NaN where a point has no value. */ readonly value: Work;
  /** On the scale of the points; the coordinate of vacuum is the last. */ readonly place: Work;
  /** Index of the best point. */ readonly index: (values: Parameters<Work>[0]) => number;
}

/** The peak over the points, which stand evenly on the scale 0, 1, 2 …; vacuum has no neighbour to bend towards. */
export function peakOf(kind: 'highest' | 'lowest', bodies: readonly Built[], vacuumAt: number | null): Peak {
  const sign = kind === 'highest' ? 1 : -1;
  const index: Peak['index'] = (values) => {
    let best = 0;
    let most = Number.NEGATIVE_INFINITY;
    for (let i = 0; i < bodies.length; i++) {
      const value = sign * bodies[i]!.value(values);
      if (Number.isNaN(value)) return -1;
      if (value > most) [best, most] = [i, value];
    }
    return best;
  };
  const vertex = (values: Parameters<Work>[0]): { place: number; value: number } => {
    const i = index(values);
    if (i < 0) return { place: Number.NaN, value: Number.NaN };
    const value = bodies[i]!.value(values);
    const inside = i > 0 && i < bodies.length - 1;
    if (!inside || [i - 1, i, i + 1].includes(vacuumAt ?? -1)) return { place: i, value };
    const top = parabola(bodies[i - 1]!.value(values), value, bodies[i + 1]!.value(values));
    return { place: i + top.place, value: top.value };
  };
  return { index, value: (values) => vertex(values).value, place: (values) => vertex(values).place };
}

/**
 * Vertex of the parabola through y(−1), y(0), y(1) whose middle one is the highest or the lowest.
 *
 *   x* = ½ (y₋ − y₊)/(y₋ − 2 y₀ + y₊)        y* = y₀ − ¼ (y₋ − y₊) x*
 */
function parabola(before: number, middle: number, after: number): { place: number; value: number } {
  const bend = before - 2 * middle + after;
  if (bend === 0) return { place: 0, value: middle };
  const place = Math.min(Math.max((before - after) / (2 * bend), -0.5), 0.5);
  return { place, value: middle - ((before - after) * place) / 4 };
}

/** `highest(… for r from 2 to 4.5)` and `placeOfHighest(…)` as a number. */
export function extremeOf(node: Extreme, bound: Bound, shop: Workshop, build: Build): Built {
  const spread: Spread = spreadRange(node.range, node.kind, node.body, bound, shop, build);
  const bodies = spread.bounds.map((at) => build(node.body, at, shop));
  const peak = peakOf(node.kind, bodies, spread.vacuumAt);
  const first = bodies[0]!;
  const { start, end } = node;
  const gives =
    node.gives === 'value' ? peak.value : (values: Parameters<Work>[0]) => spread.valueAt(peak.place(values));
  return {
    start,
    end,
    dimension: node.gives === 'value' ? first.dimension : spread.dimension,
    anyDimension: false,
    scale: node.gives === 'value' ? first.scale : 'plain',
    constant: null,
    value: gives,
    size:
      node.gives === 'value'
        ? (values) => bodies.reduce((most, body) => Math.max(most, body.size(values)), 0)
        : (values) => Math.abs(gives(values)),
    quantity: null,
    ask: null,
    parts: bodies,
    fails: 'The highest or lowest value lies in vacuum, which is no number.',
  };
}
