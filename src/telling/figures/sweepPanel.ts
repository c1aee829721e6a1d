/** Curves over an input, in a box; altitude runs upward, every other input from left to right. */

import { quantity } from '../../answer/catalogue.ts';
import { unitFor } from '../../answer/display.ts';
import { sameDimension } from '../../answer/expression/dimensions.ts';
import type { Sweep, SweepCurve, ToldRange } from '../../answer/sweeps/model.ts';
import { unitOf } from '../../answer/sweeps/shown.ts';
import type { Box } from '../scene/box.ts';
import { group, type SceneNode } from '../scene/scene.ts';
import { type MarkedSeries, measuredMarks, measuredValues } from './measuredMarks.ts';
import type { FigureOptions } from './options.ts';
import type { PanelStyle } from './overAltitudeAxes.ts';
import { type Plot, plotIn, type Side } from './plotAxes.ts';
import { type DrawnCurve, drawnCurves, hatchOf, type PlaceOf, sweepCurveNodes } from './sweepCurves.ts';
import { type DrawnHole, sweepLabels } from './sweepLabels.ts';
import { type MeasuredOnCurve, measuredOnCurves } from './sweepMeasured.ts';

/** Curves of unlike dimension stand in plots of their own, one above the other or side by side. */
export function sweepPanels(
  sweep: Sweep,
  box: Box,
  style: PanelStyle,
  { styles, measured = [] }: Pick<FigureOptions, 'styles' | 'measured'> = {},
): readonly SceneNode[] {
  const points = measuredOnCurves(sweep, measured);
  const groups = alikeCurves(sweep.curves);
  const gap = 1.2 * style.type.label;
  const beside = box.width > 1.4 * box.height;
  const room = (beside ? box.width : box.height) - gap * (groups.length - 1);
  const each = room / groups.length;
  return groups.flatMap((curves, i) => {
    const part = beside
      ? { ...box, x: box.x + i * (each + gap), width: each }
      : { ...box, y: box.y + i * (each + gap), height: each };
    return sweepPanel(sweep, curves, part, style, { styles, points });
  });
}

function alikeCurves(curves: readonly SweepCurve[]): readonly (readonly SweepCurve[])[] {
  const groups: SweepCurve[][] = [];
  for (const curve of curves) {
    const group = groups.find(
      ([first]) => first !== undefined && sameDimension(first.dimension, curve.dimension),
    );
    if (group === undefined) groups.push([curve]);
    else group.push(curve);
  }
  return groups;
}

function sweepPanel(
  sweep: Sweep,
  curves: readonly SweepCurve[],
  box: Box,
  style: PanelStyle,
  {
    styles,
    points,
  }: { readonly styles: FigureOptions['styles']; readonly points: readonly MeasuredOnCurve[] },
): readonly SceneNode[] {
  const own = points.filter(({ curve }) => curves.includes(curve));
  const isUpright = sweep.range.quantity === 'altitude';
  const [input, followed] = [
    rangeSide(sweep.range),
    valueSide(
      curves,
      measuredValues(
        own.map(({ series }) => series),
        isOnRange(sweep.range),
      ),
    ),
  ];
  const plot = isUpright ? plotIn(box, followed, input, style) : plotIn(box, input, followed, style);
  const place: PlaceOf = isUpright
    ? (x, y) => ({ x: plot.x(y), y: plot.y(x) })
    : (x, y) => ({ x: plot.x(x), y: plot.y(y) });
  const drawn = drawnCurves(sweep, curves, place, styles);
  const holes = drawnHoles(drawn, plot, isUpright);
  return [
    group('grid', plot.grid),
    group(
      'holes',
      holes.map((hole) => holeNode(hole, drawn.length, style)),
    ),
    group('axis', plot.words),
    ...drawn.map((each) => group(`${each.style.colour} curve`, sweepCurveNodes(each, style.line))),
    ...measuredMarks(
      markedOf(own, drawn),
      ({ at }, value) => (isOnRange(sweep.range)(at) ? place(at, value) : null),
      style,
    ),
    group('labels', sweepLabels(sweep, drawn, holes, plot.box, place, style)),
  ];
}

export const isOnRange =
  ({ from, to }: ToldRange) =>
  (at: number): boolean =>
    at >= from && at <= to;

const markedOf = (own: readonly MeasuredOnCurve[], drawn: readonly DrawnCurve[]): readonly MarkedSeries[] =>
  own.flatMap(({ curve, series }) => {
    const found = drawn.find((each) => each.curve === curve);
    return found === undefined ? [] : [{ ...series, drawn: found }];
  });

export function rangeSide(range: ToldRange): Side {
  const { from, to, spacing, label, quantity: name } = range;
  return {
    from,
    to,
    inRatios: spacing === 'in equal ratios',
    label,
    unit: unitFor(quantity(name), [from, to]),
  };
}

/** Room beyond the least and the largest, as a share of the span. */
const MARGIN = 0.08;

function valueSide(curves: readonly SweepCurve[], more: readonly number[]): Side {
  const values = curves.flatMap(({ points, highest, lowest }) => [
    ...points.flatMap(({ y, low, high }) => [y, low, high]),
    highest?.y ?? null,
    lowest?.y ?? null,
  ]);
  const known = [...values.filter((value) => value !== null), ...more];
  const [low, high] = known.length === 0 ? [0, 1] : [Math.min(...known), Math.max(...known)];
  const flat = high - low <= 1e-6 * Math.max(Math.abs(low), Math.abs(high));
  const margin = flat ? 0.05 * Math.abs(high) + 1e-9 : MARGIN * (high - low);
  const labels = [...new Set(curves.map(({ label }) => label))];
  const [first] = curves;
  const unit = first === undefined ? { symbol: '', perSI: 1 } : unitOf(first, known);
  return { from: low - margin, to: high + margin, inRatios: false, unit, label: labels.join('; ') };
}

function drawnHoles(curves: readonly DrawnCurve[], plot: Plot, isUpright: boolean): readonly DrawnHole[] {
  const holes: { hole: DrawnHole['hole']; curves: DrawnCurve[] }[] = [];
  for (const drawn of curves)
    for (const hole of drawn.curve.holes) {
      const same = holes.find(
        ({ hole: other }) =>
          other.from === hole.from && other.to === hole.to && other.problem.what === hole.problem.what,
      );
      if (same === undefined) holes.push({ hole, curves: [drawn] });
      else same.curves.push(drawn);
    }
  return holes.map(({ hole, curves: own }) => {
    const [a, b] = isUpright ? [plot.y(hole.to), plot.y(hole.from)] : [plot.x(hole.from), plot.x(hole.to)];
    const box = isUpright ? { ...plot.box, y: a, height: b - a } : { ...plot.box, x: a, width: b - a };
    return { hole, box, curves: own };
  });
}

/** Hatched as the curve's hatch leans; in ink where no curve has a value. */
function holeNode({ box, curves }: DrawnHole, all: number, { line }: PanelStyle): SceneNode {
  const [only] = curves;
  const own = curves.length < all && only !== undefined ? only.style : null;
  return {
    kind: 'rect',
    ...box,
    fill: own === null ? hatchOf('ink-3', 45, line) : hatchOf(own.colour, own.hatchAngle, line),
    stroke: 'rule-2',
    strokeWidth: line.grid,
  };
}
