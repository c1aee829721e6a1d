/** The plot of the pressure along walls: axes, the air's line, a curve an engine, measured points. */

import { scaleLinear, scaleLog } from 'd3-scale';
import { textWidth } from '../look/measureText.ts';
import { formatNumber } from '../numbers/formatNumber.ts';
import type { Box } from '../scene/box.ts';
import { polyline, segment } from '../scene/pathData.ts';
import { group, type SceneNode } from '../scene/scene.ts';
import type { DrawnEngine } from './drawnEngines.ts';
import { dashOf, marker } from './marks.ts';
import { measuredMarks, type seriesFor } from './measuredMarks.ts';
import type { PanelStyle } from './overAltitudeAxes.ts';
import { type LettingGo, separationBands } from './separationBands.ts';
import { pointsOf, wallWords } from './wallLabels.ts';

/** [m] from the throat: where the first of the walls begins, and where the last one ends. */
function wallEnds(engines: readonly DrawnEngine[]): [number, number] {
  const places = engines.flatMap(({ engine }) => engine.wall.map((point) => point.axial));
  return [Math.min(...places), Math.max(...places)];
}

/** A logarithmic scale has no place for a pressure of nothing. */
export function isOnWall(engines: readonly DrawnEngine[]) {
  const [from, to] = wallEnds(engines);
  return (at: number, _place: string, value: number): boolean => at >= from && at <= to && value > 0;
}

/** What lies over and under the curves. */
interface OverCurves {
  readonly measured: ReturnType<typeof seriesFor>;
  readonly loose: readonly LettingGo[];
  /** [Pa] lowest on the scale of a clip, in which the air's pressure is told elsewhere; null: none. */ readonly low:
    | number
    | null;
}

export function wallPanel(
  engines: readonly DrawnEngine[],
  ambient: number,
  box: Box,
  style: PanelStyle,
  { measured, loose, low: lowest }: OverCurves,
): SceneNode[] {
  const { type, line } = style;
  const pressures = [
    ...engines.flatMap(({ engine }) => engine.wall.map((point) => point.pressure)),
    ...measured.flatMap(({ points }) =>
      points.flatMap(({ value, plusMinus }) => [value, value - (plusMinus ?? 0), value + (plusMinus ?? 0)]),
    ),
  ].filter((pressure) => pressure > 0);
  const low = 10 ** Math.floor(Math.log10(lowest ?? Math.min(...pressures, ambient > 0 ? ambient : 1e5)));
  const high = 10 ** Math.ceil(Math.log10(Math.max(...pressures)));
  const left = box.x + textWidth('0.001 bar', type.label, 400) + 0.4 * type.label;
  const plot = {
    x: left,
    y: box.y + 0.6 * type.label,
    width: box.x + box.width - left - 0.5 * type.label,
    height: box.height - 3.2 * type.label,
  };
  const y = scaleLog([low, high], [plot.y + plot.height, plot.y]);
  const x = scaleLinear(wallEnds(engines), [plot.x, plot.x + plot.width]);
  const decades = Array.from({ length: Math.round(Math.log10(high / low)) + 1 }, (_, i) => low * 10 ** i);
  // A tick right at the corner would stand on the pressure's own label.
  const ticks = x.ticks(5).filter((tick) => x(tick) > plot.x + 1.5 * type.label);
  const bottom = plot.y + plot.height;
  const word = (text: string, atX: number, atY: number, anchor: 'start' | 'middle' | 'end'): SceneNode => ({
    kind: 'text',
    x: atX,
    y: atY,
    text,
    size: type.label,
    weight: 400,
    anchor,
    fill: 'ink',
  });
  const digits = Math.max(0, ...ticks.map((tick) => (String(tick).split('.')[1] ?? '').length));
  return [
    group('grid', [
      {
        kind: 'path',
        d:
          decades.map((p) => segment(plot.x, y(p), plot.x + plot.width, y(p))).join('') +
          ticks.map((t) => segment(x(t), plot.y, x(t), bottom)).join(''),
        stroke: 'rule',
        strokeWidth: line.grid,
      },
    ]),
    group('axis', [
      ...decades.map((p) =>
        word(
          `${formatNumber(p / 1e5, 1)}\u00a0bar`,
          plot.x - 0.4 * type.label,
          y(p) + 0.33 * type.label,
          'end',
        ),
      ),
      ...ticks.map((t) =>
        word(t.toFixed(digits).replace('-', '−'), x(t), bottom + 1.15 * type.label, 'middle'),
      ),
      word('distance from the throat, m', plot.x + plot.width / 2, bottom + 2.35 * type.label, 'middle'),
    ]),
    ...separationBands(loose, plot, x, style),
    ...airLine(ambient < low ? 0 : ambient, plot, y, style),
    ...engines.map((drawn) => curveOf(drawn, x, y, style)),
    ...measuredMarks(
      measured,
      ({ at }, value, place) => (isOnWall(engines)(at, place, value) ? { x: x(at), y: y(value) } : null),
      style,
    ),
    group('labels', wallWords(engines, lowest === null ? ambient : 0, plot, x, y, style)),
  ];
}

function airLine(ambient: number, plot: Box, y: (p: number) => number, { line }: PanelStyle): SceneNode[] {
  if (ambient <= 0) return [];
  const at = y(ambient);
  return [
    {
      kind: 'path',
      d: segment(plot.x, at, plot.x + plot.width, at),
      stroke: 'ink',
      strokeWidth: line.leader,
      dash: [6, 4].map((length) => length * line.leader),
    },
  ];
}

function curveOf(
  { engine, style }: DrawnEngine,
  x: (axial: number) => number,
  y: (pressure: number) => number,
  { line }: PanelStyle,
): SceneNode {
  const lip = engine.wall.at(-1);
  return group(`${style.colour} curve`, [
    {
      kind: 'path',
      d: polyline(pointsOf(engine, x, y)),
      stroke: style.colour,
      strokeWidth: line.curve,
      dash: dashOf(style, line.curve),
      join: 'round',
    },
    ...(lip === undefined ? [] : [marker(style, x(lip.axial), y(lip.pressure), line.marker)]),
  ]);
}
