/** Measured points over the curves of a sweep: those whose computed values lie on the curve. */

import type { MeasuredPoint, MeasuredSeries } from '../../answer/measured/model.ts';
import type { Sweep, SweepCurve } from '../../answer/sweeps/model.ts';

/** How far a computed value may lie from the straight line between two points of its curve: of the curve's span, and of that line. */
const NEAR = { span: 0.01, line: 0.15 } as const;

export interface MeasuredOnCurve {
  readonly curve: SweepCurve;
  readonly series: MeasuredSeries;
}

/** A set of points belongs to one curve at most. */
export function measuredOnCurves(
  { curves, range }: Sweep,
  measured: readonly MeasuredSeries[],
): readonly MeasuredOnCurve[] {
  const here = measured.filter(({ place }) => range.over === place || range.over.endsWith(`.${place}`));
  return here.flatMap((series) => {
    const fits = curves
      .filter((one) => isOf(series, one))
      .map((curve) => ({ curve, off: offOf(series.points, curve) }))
      .filter(({ off }) => off <= 1)
      .sort((one, other) => one.off - other.off);
    return fits.slice(0, 1).map(({ curve }) => ({ curve, series }));
  });
}

const isOf = ({ engine, quantity }: MeasuredSeries, curve: SweepCurve): boolean =>
  curve.parts !== null && curve.quantity === quantity && curve.engines.includes(engine);

/** The farthest of the computed values, over what is near; points at other surroundings, or with another input, lie elsewhere. */
function offOf(points: readonly MeasuredPoint[], curve: SweepCurve): number {
  const values = curve.points.flatMap(({ y }) => y ?? []);
  const span = Math.max(...values) - Math.min(...values);
  const least = NEAR.span * span + 1e-9 * Math.max(...values.map(Math.abs));
  const offs = points.flatMap(({ at, computed }) => {
    const [before, after] = around(curve, at) ?? [];
    if (computed === null || before === undefined || after === undefined) return [];
    const share = after.x === before.x ? 0 : (at - before.x) / (after.x - before.x);
    const there = before.y + share * (after.y - before.y);
    return [Math.abs(there - computed) / (least + NEAR.line * Math.abs(after.y - before.y))];
  });
  return offs.length === 0 ? Number.POSITIVE_INFINITY : Math.max(...offs);
}

interface Known {
  readonly x: number;
  readonly y: number;
}

/** The points of a curve on either side; null where it has none. */
function around({ points }: SweepCurve, x: number): readonly [Known, Known] | null {
  const next = points.findIndex((point) => point.x >= x);
  const after = points[next];
  const before = points[after?.x === x ? next : next - 1];
  if (after === undefined || before === undefined || before.y === null || after.y === null) return null;
  return [
    { x: before.x, y: before.y },
    { x: after.x, y: after.y },
  ];
}
