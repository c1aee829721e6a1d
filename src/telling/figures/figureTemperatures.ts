/** The staircase of temperatures along a cooled wall: gas at the wall, its hot face, its cold face, coolant. */

import { scaleLinear } from 'd3-scale';
import { coolingVerdict } from '../../answer/heat/heatWords.ts';
import type { CoolingAnswer } from '../../answer/heat/model.ts';
import type { StudyAnswer } from '../../answer/model.ts';
import { layoutOf } from '../look/formats.ts';
import { textWidth } from '../look/measureText.ts';
import { formatValue } from '../numbers/formatNumber.ts';
import type { Box } from '../scene/box.ts';
import { type Point, polyline, segment } from '../scene/pathData.ts';
import { plainText } from '../scene/safeText.ts';
import { group, type Scene, type SceneNode } from '../scene/scene.ts';
import { type DrawnEngine, drawnEngines } from './drawnEngines.ts';
import { frame } from './frame.ts';
import { wordsAt } from './marks.ts';
import {
  type MarkedSeries,
  measuredMarks,
  measuredValues,
  measuredWords,
  seriesFor,
} from './measuredMarks.ts';
import type { FigureOptions } from './options.ts';
import type { PanelStyle } from './overAltitudeAxes.ts';
import { courseLabels, courses } from './temperatureCourses.ts';

type Cooled = DrawnEngine & { readonly cooling: CoolingAnswer };

/** The first engine whose cooling could be computed, the compared ones before others; null: none. */
function cooledEngine(answer: StudyAnswer): Cooled | null {
  const [first] = drawnEngines(answer, 4).engines.flatMap((drawn) => {
    const { cooling } = drawn.engine;
    return cooling ? [{ ...drawn, cooling }] : [];
  });
  return first ?? null;
}

/** What the figure finds, in one line. */
function finding({ engine, cooling }: Cooled): string {
  const { hottestWall, wallLimit, heatMargin } = cooling;
  const wall = `its wall reaches ${formatValue('cooling.hottestWall', hottestWall)} and stands ${formatValue('cooling.wallLimit', wallLimit)}`;
  return heatMargin < 1
    ? `${engine.name}: ${wall}, and the coolant cannot take all the heat`
    : `${engine.name}: ${wall}`;
}

/** @returns null where no engine of the study is cooled */
export function temperaturesAlongWall(answer: StudyAnswer, options: FigureOptions): Scene | null {
  if (Object.keys(answer.engines).length === 0) return null;
  const drawn = cooledEngine(answer);
  if (drawn === null) return null;
  const layout = layoutOf(options.size);
  const title = options.title ?? finding(drawn);
  const measured = courses.flatMap(({ quantity }) =>
    seriesFor(options.measured, [drawn], quantity, ['wall.axial']),
  );
  const around = frame(
    layout,
    {
      title,
      subtitle:
        'From the injector face to the lip: gas at the wall if nothing cooled it, both faces of the wall, coolant',
      foot: [
        'Published scatter of Bartz’s equation, −45 to +20 %, not drawn. Models: heat-gas-side, heat-cooling.',
        ...measuredWords(measured, isOnWall(drawn)),
      ],
    },
    options,
  );
  return {
    width: layout.width,
    height: layout.height,
    title,
    description: `${drawn.engine.name}: ${coolingVerdict(drawn.cooling)} ${answer.caution}`,
    theme: options.theme,
    transparent: options.transparent ?? false,
    children: [...panel(drawn, around.content, layout, measured), ...around.nodes],
  };
}

/** Whether a place lies on the wall that is drawn. */
function isOnWall({ cooling }: Cooled): (at: number) => boolean {
  const places = drawnWall(cooling).points.map(({ axial }) => axial);
  const [from, to] = [Math.min(...places), Math.max(...places)];
  return (at) => at >= from && at <= to;
}

const drawnWall = ({ walls }: CoolingAnswer) => walls.at(-1)!;

function panel(
  drawn: Cooled,
  box: Box,
  { type, line }: PanelStyle,
  measured: readonly MarkedSeries[],
): SceneNode[] {
  const { engine, style, cooling } = drawn;
  const wall = drawnWall(cooling);
  const { points } = wall;
  const isOn = isOnWall(drawn);
  const hottest = Math.max(...points.map(courses[0]!.of), ...measuredValues(measured, isOn));
  const top = 500 * Math.ceil(hottest / 500);
  const left = box.x + textWidth('4 000 K', type.label, 400) + 0.4 * type.label;
  const plot = {
    x: left,
    y: box.y + 1.6 * type.label,
    width: box.x + box.width - left - 0.5 * type.label,
    height: box.height - 4.2 * type.label,
  };
  const bottom = plot.y + plot.height;
  const y = scaleLinear([0, top], [bottom, plot.y]);
  const axials = points.map(({ axial }) => axial);
  const x = scaleLinear([Math.min(...axials), Math.max(...axials)], [plot.x, plot.x + plot.width]);
  const rungs = y.ticks(6);
  const ticks = x.ticks(5);
  const digits = Math.max(0, ...ticks.map((tick) => (String(tick).split('.')[1] ?? '').length));
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
  const lines = courses.map(({ of }): Point[] =>
    points.map((point) => ({ x: x(point.axial), y: y(of(point)) })),
  );
  const limit = y(cooling.wallLimit);
  return [
    group(`grid ${engine.id}`, [
      {
        kind: 'path',
        d:
          rungs.map((t) => segment(plot.x, y(t), plot.x + plot.width, y(t))).join('') +
          ticks.map((t) => segment(x(t), plot.y, x(t), bottom)).join(''),
        stroke: 'rule',
        strokeWidth: line.grid,
      },
    ]),
    group(`axis ${engine.id}`, [
      ...rungs.map((t) =>
        word(formatValue('cooling.wallHot', t), plot.x - 0.4 * type.label, y(t) + 0.33 * type.label, 'end'),
      ),
      ...ticks.map((t) =>
        word(t.toFixed(digits).replace('-', '−'), x(t), bottom + 1.15 * type.label, 'middle'),
      ),
      word('distance from the throat, m', plot.x + plot.width / 2, bottom + 2.35 * type.label, 'middle'),
    ]),
    {
      kind: 'path',
      d: segment(plot.x, limit, plot.x + plot.width, limit),
      stroke: style.colour,
      strokeWidth: line.leader,
      dash: [2, 4].map((length) => length * line.leader),
    },
    ...courses.map(({ colour, dash, width }, i): SceneNode => {
      const strokeWidth = width * line.curve;
      return {
        kind: 'path',
        d: polyline(lines[i]!),
        stroke: colour === 'own' ? style.colour : colour,
        strokeWidth,
        dash: dash.map((length) => length * strokeWidth),
        join: 'round',
      };
    }),
    ...measuredMarks(
      measured,
      ({ at }, value) => (isOn(at) && value >= 0 ? { x: x(at), y: y(value) } : null),
      { type, line },
    ),
    ...wordsAt(
      [
        {
          text: plainText(`${engine.name}${cooling.walls.length > 1 ? `, ${wall.name}` : ''}`),
          size: type.label,
          weight: 700,
          fill: style.colour,
        },
      ],
      plot.x,
      box.y,
    ),
    ...courseLabels(points, cooling, lines, limit, plot, { type, line }),
  ];
}
