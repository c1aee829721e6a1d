/**
 * A quantity over altitude: altitude upward from 0 to 40 km and, after a break, vacuum; the quantity along x;
 * at the left the strip tinted by the pressure of the air, at the right that pressure in bar.
 * The curves are one layer; the cursor at an altitude is another, drawn afresh while something is dragged.
 */

import { scaleLinear } from 'd3-scale';
import type { ConditionRow, StudyAnswer } from '../../answer/model.ts';
import { geometricAltitudeAtPressure } from '../../physics/air/index.ts';
import type { LineSizes } from '../look/formats.ts';
import { textWidth } from '../look/measureText.ts';
import type { Box } from '../scene/box.ts';
import { segment } from '../scene/pathData.ts';
import { group, type SceneNode } from '../scene/scene.ts';
import { type AltitudeAxis, altitudeAxis, LINEAR_TOP } from './altitudeAxis.ts';
import { ambientAt, conditionAt, rowsOf } from './conditions.ts';
import { drawnEngines } from './drawnEngines.ts';
import { marker } from './marks.ts';
import { measuredMarks, seriesFor } from './measuredMarks.ts';
import type { Altitude, FigureOptions } from './options.ts';
import {
  airStrip,
  altitudeWords,
  gridOf,
  type PanelStyle,
  pressureAxis,
  quantityAxis,
  tickCount,
} from './overAltitudeAxes.ts';
import {
  type Curve,
  curveNodes,
  curveOf,
  extent,
  type OverAltitudeQuantity,
  quantityAt,
  sampled,
  unitOf,
} from './overAltitudeCurves.ts';
import { labelNodes } from './overAltitudeLabels.ts';

export interface OverAltitudePanel {
  readonly axis: AltitudeAxis;
  /** x of a value [SI]. */ x(value: number): number;
  /** Where the curves are. */ readonly plot: Box;
  /** The strip of air pressure: the place of a handle. */ readonly strip: Box;
  /** Grid, axes and curves. */ readonly nodes: readonly SceneNode[];
  /** The words in the plot and the marks they speak of; drawn over curves and cursor. */
  readonly labels: readonly SceneNode[];
  /** Line and markers at an altitude; `rows` by engine id where the caller has computed them exactly. */
  cursor(altitude: Altitude, rows?: Readonly<Record<string, ConditionRow>>): readonly SceneNode[];
}

/** Lay the panel into a box. `axisRight` is how far the words of the right axis may go. */
export function overAltitudePanel(
  answer: StudyAnswer,
  quantity: OverAltitudeQuantity,
  box: Box,
  style: PanelStyle,
  options: FigureOptions,
  axisRight: number = box.x + box.width,
): OverAltitudePanel {
  const { type, line } = style;
  const engines = drawnEngines(answer, 4, options.styles).engines;
  const rows = engines.map(({ engine }) => sampled(rowsOf(engine, options)));
  const leftWords = textWidth('vacuum', type.label, 400);
  const rightWords = Math.max(textWidth('0.003', type.small, 400), textWidth('no air', type.small, 400));
  const stripWidth = 0.55 * type.label;
  const gap = 0.3 * type.label;
  const strip = {
    x: box.x + leftWords + gap,
    y: box.y + 0.5 * type.label,
    width: stripWidth,
    height: box.height - 0.5 * type.label - 2.75 * type.label,
  };
  const plotLeft = strip.x + strip.width + 0.35 * type.label;
  const plotRight = Math.min(axisRight - rightWords - gap - 0.35 * type.small, box.x + box.width);
  const plot = { x: plotLeft, y: strip.y, width: plotRight - plotLeft, height: strip.height };
  const axis = altitudeAxis(plot.y, plot.y + plot.height, Math.max(0.07 * plot.height, 1.02 * type.label));
  const unit = unitOf(quantity, rows, engines);
  const measured = seriesFor(options.measured, engines, quantity, OVER_ALTITUDE);
  const scale = scaleLinear(withMeasured(extent(quantity, rows, engines), measured), [
    plot.x,
    plot.x + plot.width,
  ]).nice(5);
  const x = (value: number): number => scale(value);
  const curves = engines.map((drawn, i) => curveOf(drawn, rows[i] ?? [], quantity, axis, x, plot));
  const ticks = scale.ticks(tickCount(plot.width, type.label));
  return {
    axis,
    x,
    plot,
    strip,
    nodes: [
      group('grid', gridOf(plot, axis, ticks.map(x), line)),
      group('air', airStrip(strip, axis, line)),
      group('axis', [
        ...altitudeWords(strip, axis, style),
        ...pressureAxis(plot, axis, style),
        ...quantityAxis(plot, ticks, x, quantity, unit, style),
      ]),
      ...curves.map((curve) => group(`${curve.style.colour} curve`, curveNodes(curve, line))),
      ...measuredMarks(
        measured,
        ({ at }, value, place) => {
          const altitude = altitudeOnAxis(at, place);
          return altitude === null ? null : { x: x(value), y: axis.y(altitude) };
        },
        style,
      ),
    ],
    // Finding room for words takes longer than all the rest; a page that has its own words does not ask.
    get labels() {
      return [group('labels', labelNodes(answer, curves, quantity, plot, axis, x, style, options.altitude))];
    },
    cursor: (altitude, exact) => cursorNodes(curves, altitude, exact, quantity, axis, x, plot, strip, line),
  };
}

/** Places of measured points that lie on the axis of altitude. */
export const OVER_ALTITUDE: readonly string[] = ['altitude', 'ambientPressure'];

/** [m] where a measured point stands, in standard air; null where that is not on the axis. */
export function altitudeOnAxis(at: number, place: string): number | null {
  if (place !== 'altitude' && at < ambientAt(LINEAR_TOP)) return null;
  const altitude = place === 'altitude' ? at : geometricAltitudeAtPressure(at);
  return altitude > LINEAR_TOP || altitude < 0 ? null : altitude;
}

/** So wide that measured points lie inside. */
function withMeasured(
  [low, high]: readonly [number, number],
  measured: ReturnType<typeof seriesFor>,
): [number, number] {
  const ends = measured.flatMap(({ points }) =>
    points.flatMap(({ value, plusMinus }) => [value - (plusMinus ?? 0), value + (plusMinus ?? 0)]),
  );
  return [Math.min(low, ...ends), Math.max(high, ...ends)];
}

function cursorNodes(
  curves: readonly Curve[],
  altitude: Altitude,
  exact: Readonly<Record<string, ConditionRow>> | undefined,
  quantity: OverAltitudeQuantity,
  axis: AltitudeAxis,
  x: (value: number) => number,
  plot: Box,
  strip: Box,
  line: LineSizes,
): SceneNode[] {
  const y = axis.y(altitude);
  const ambient = ambientAt(altitude);
  const nodes: SceneNode[] = [
    {
      kind: 'path',
      d: segment(strip.x, y, plot.x + plot.width, y),
      stroke: 'ink',
      strokeWidth: line.plumb,
    },
  ];
  for (const curve of curves) {
    const row = exact?.[curve.engine.id] ?? conditionAt(curve.rows, ambient);
    const value = quantityAt(quantity, row);
    if (value === null || x(value) < plot.x || x(value) > plot.x + plot.width) continue;
    nodes.push(marker(curve.style, x(value), y, line.marker));
  }
  return nodes;
}
