/** Pressure along the wall, injector face to lip, on a logarithmic scale, with the air outside. */

import { scaleLinear, scaleLog } from 'd3-scale';
import type { StudyAnswer } from '../../answer/model.ts';
import { layoutOf } from '../look/formats.ts';
import { textWidth } from '../look/measureText.ts';
import { formatNumber, formatPressure } from '../numbers/formatNumber.ts';
import type { Box } from '../scene/box.ts';
import { polyline, segment } from '../scene/pathData.ts';
import { plainText } from '../scene/safeText.ts';
import { group, type Scene, type SceneNode } from '../scene/scene.ts';
import { ambientAt } from './conditions.ts';
import { type DrawnEngine, drawnEngines } from './drawnEngines.ts';
import { footOf, lipPressure, wallFinding } from './findings.ts';
import { frame } from './frame.ts';
import { dashOf, marker, type Words, wordsAt, wordsSize } from './marks.ts';
import type { FigureOptions } from './options.ts';
import type { PanelStyle } from './overAltitudeAxes.ts';

export function pressureAlongWall(answer: StudyAnswer, options: FigureOptions): Scene {
  const layout = layoutOf(options.size);
  const { engines, leftOut } = drawnEngines(answer, 4);
  const altitude = options.altitude ?? 0;
  const ambient = ambientAt(altitude);
  const title = options.title ?? wallFinding(engines);
  const around = frame(layout, {
    title,
    subtitle: 'Pressure on the wall from the injector face to the lip, the gas filling the nozzle',
    foot: footOf(answer, engines, leftOut),
  });
  return {
    width: layout.width,
    height: layout.height,
    title,
    description: describe(answer, engines, ambient),
    theme: options.theme,
    transparent: options.transparent ?? false,
    children: [...panel(engines, ambient, around.content, layout), ...around.nodes],
  };
}

function describe(answer: StudyAnswer, engines: readonly DrawnEngine[], ambient: number): string {
  const parts = engines.map(
    ({ engine }) =>
      `${engine.name}: ${formatPressure(engine.chamber.pressure)} in the chamber, ${formatPressure(lipPressure(engine))} on the wall at the lip.`,
  );
  return `Pressure on a logarithmic scale over the distance from the throat. Air outside ${formatPressure(ambient)}. ${parts.join(' ')} ${answer.caution}`;
}

function panel(engines: readonly DrawnEngine[], ambient: number, box: Box, style: PanelStyle): SceneNode[] {
  const { type, line } = style;
  const pressures = engines.flatMap(({ engine }) => engine.wall.map((point) => point.wallPressure));
  const places = engines.flatMap(({ engine }) => engine.wall.map((point) => point.axial));
  const low = 10 ** Math.floor(Math.log10(Math.min(...pressures, ambient > 0 ? ambient : 1e5)));
  const high = 10 ** Math.ceil(Math.log10(Math.max(...pressures)));
  const left = box.x + textWidth('0.001 bar', type.label, 400) + 0.4 * type.label;
  const plot = {
    x: left,
    y: box.y + 0.6 * type.label,
    width: box.x + box.width - left - 0.5 * type.label,
    height: box.height - 3.2 * type.label,
  };
  const y = scaleLog([low, high], [plot.y + plot.height, plot.y]);
  const x = scaleLinear([Math.min(...places), Math.max(...places)], [plot.x, plot.x + plot.width]);
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
    ...airLine(ambient, plot, y, style),
    ...engines.map((drawn) => curveOf(drawn, x, y, style)),
    ...namesOf(engines, plot, x, y, style),
  ];
}

function airLine(
  ambient: number,
  plot: Box,
  y: (p: number) => number,
  { type, line }: PanelStyle,
): SceneNode[] {
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
    ...wordsAt(
      [{ text: `air outside, ${formatPressure(ambient)}`, size: 0.9 * type.label, weight: 400, fill: 'ink' }],
      plot.x + 0.3 * type.label,
      at - 1.2 * type.label,
      'start',
      true,
    ),
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
      d: polyline(engine.wall.map((point) => ({ x: x(point.axial), y: y(point.wallPressure) }))),
      stroke: style.colour,
      strokeWidth: line.curve,
      dash: dashOf(style, line.curve),
      join: 'round',
    },
    ...(lip === undefined ? [] : [marker(style, x(lip.axial), y(lip.wallPressure), line.marker)]),
  ]);
}

/** Names and lip pressures in the empty upper right, each after its line sample; the curves fall away from there. */
function namesOf(
  engines: readonly DrawnEngine[],
  plot: Box,
  _x: (axial: number) => number,
  _y: (pressure: number) => number,
  { type }: PanelStyle,
): SceneNode[] {
  let top = plot.y + 0.4 * type.label;
  const right = plot.x + plot.width - 0.4 * type.label;
  return engines.flatMap(({ engine, style }) => {
    const words: Words[] = [
      { text: plainText(engine.name), size: type.label, weight: 700, fill: style.colour },
      {
        text: `${formatPressure(lipPressure(engine))} on the wall at the lip`,
        size: 0.9 * type.label,
        weight: 400,
        fill: 'ink',
      },
    ];
    const nodes = wordsAt(words, right, top, 'end', true);
    top += wordsSize(words).height + 0.4 * type.label;
    return nodes;
  });
}
