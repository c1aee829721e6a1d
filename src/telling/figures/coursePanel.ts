/** Named curves of one quantity over another in a plot, each name near its curve and clear of the others. */

import { quantity } from '../../answer/catalogue.ts';
import { unitFor } from '../../answer/display.ts';
import type { EngineStyle } from '../look/engineStyles.ts';
import type { Box } from '../scene/box.ts';
import { type Point, polyline } from '../scene/pathData.ts';
import { plainText } from '../scene/safeText.ts';
import { group, type SceneNode } from '../scene/scene.ts';
import { dashOf, type Words, wordsAt, wordsSize } from './marks.ts';
import { type MarkedSeries, measuredMarks, measuredValues } from './measuredMarks.ts';
import type { PanelStyle } from './overAltitudeAxes.ts';
import { type Candidate, LabelRoom, type Obstacle } from './placeLabels.ts';
import { type Plot, plotIn, type Side } from './plotAxes.ts';

export interface Course {
  readonly words: string;
  readonly style: EngineStyle;
  /** [SI] */ readonly points: readonly Point[];
  /** Of the line, over that of a curve. */ readonly width: number;
}

export interface CourseSide {
  /** Name in the catalogue. */ readonly quantity: string;
  /** [SI] where the side begins; absent: at the least value. */ readonly from?: number;
  readonly inRatios?: boolean;
}

export interface CourseSides {
  readonly across: CourseSide;
  readonly up: CourseSide;
}

/** What stands in the plot beside the curves: it lies behind them, its words keep clear of them and of their names. */
export interface Beside {
  readonly shapes: readonly SceneNode[];
  readonly obstacles: readonly Obstacle[];
  /** That no words may cover. */ readonly marks: readonly Box[];
  readonly words: (room: LabelRoom) => readonly SceneNode[];
}
const NOTHING_BESIDE: Beside = { shapes: [], obstacles: [], marks: [], words: () => [] };

export function coursePanel(
  courses: readonly Course[],
  { across, up }: CourseSides,
  box: Box,
  style: PanelStyle,
  measured: readonly MarkedSeries[] = [],
  besideOf: (plot: Plot) => Beside = () => NOTHING_BESIDE,
): readonly SceneNode[] {
  const all = courses.flatMap(({ points }) => points);
  const isOn = isOnCourses(courses);
  const plot = plotIn(
    box,
    sideOf(
      across,
      all.map(({ x }) => x),
      0,
    ),
    sideOf(up, [...all.map(({ y }) => y), ...measuredValues(measured, isOn)], 0.06),
    style,
  );
  const beside = besideOf(plot);
  const lines = courses.map(({ points }) => points.map(({ x, y }) => ({ x: plot.x(x), y: plot.y(y) })));
  const room = new LabelRoom(plot.box, [
    ...lines.map((points) => ({ points, cost: 60 })),
    ...beside.obstacles,
  ]);
  for (const mark of beside.marks) room.keepClear(mark);
  return [
    group('grid', plot.grid),
    group('axis', plot.words),
    ...beside.shapes,
    ...courses.map(({ style: own, width }, i) =>
      group(`${own.colour} curve`, [
        {
          kind: 'path',
          d: polyline(lines[i]!),
          stroke: own.colour,
          strokeWidth: width * style.line.curve,
          dash: dashOf(own, width * style.line.curve),
          join: 'round',
        },
      ]),
    ),
    ...measuredMarks(
      measured,
      ({ at }, value) => (isOn(at) ? { x: plot.x(at), y: plot.y(value) } : null),
      style,
    ),
    group('labels', [...names(courses, lines, room, style), ...beside.words(room)]),
  ];
}

/** Whether a place [SI] lies on the axis across. */
export function isOnCourses(courses: readonly Course[]): (at: number) => boolean {
  const places = courses.flatMap(({ points }) => points.map(({ x }) => x));
  const [from, to] = [Math.min(...places), Math.max(...places)];
  return (at) => at >= from && at <= to;
}

/** Ends of one side, with a little room above. */
function sideOf(
  { quantity: name, from, inRatios = false }: CourseSide,
  values: readonly number[],
  above: number,
): Side {
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const entry = quantity(name);
  const start = from ?? least;
  return {
    from: start,
    to: inRatios ? most * (most / start) ** above : most + above * (most - start),
    inRatios,
    unit: unitFor(entry, values),
    label: entry.label,
  };
}

function names(
  courses: readonly Course[],
  lines: readonly (readonly Point[])[],
  room: LabelRoom,
  { type }: PanelStyle,
): readonly SceneNode[] {
  return courses.flatMap(({ words: said, style }, i) => {
    const words: Words[] = [
      { text: plainText(said), size: 0.9 * type.label, weight: 600, fill: style.colour },
    ];
    const size = wordsSize(words);
    const placed = room.place(size.width, size.height, 0.1 * type.label, around(lines[i]!, size, type.label));
    if (placed === null) return [];
    const [from, to] = placed.candidate.leader ?? [];
    return [
      ...(from === undefined || to === undefined
        ? []
        : [
            {
              kind: 'path' as const,
              d: polyline([from, to]),
              stroke: style.colour,
              strokeWidth: 0.3 * type.label * 0.2,
            },
          ]),
      ...wordsAt(words, placed.box.x, placed.box.y, 'start', true),
    ];
  });
}

/** Places beside, above and below points of a curve, the nearest first, its highest point preferred. */
function around(
  line: readonly Point[],
  size: { readonly width: number; readonly height: number },
  step: number,
): readonly Candidate[] {
  const top = line.reduce((best, point) => (point.y < best.y ? point : best), line[0]!);
  const candidates: Candidate[] = [];
  for (let i = 0; i < line.length; i += Math.max(1, Math.floor(line.length / 40))) {
    const at = line[i]!;
    const far = 0.02 * Math.hypot(at.x - top.x, at.y - top.y);
    for (const away of [0.4, 1, 2, 3.5]) {
      const leaderOf = (x: number, y: number) => (away < 1.5 ? {} : { leader: [{ x, y }, at] as const });
      const middle = at.y - size.height / 2;
      candidates.push(
        { x: at.x + away * step, y: middle, cost: far + 12 * away, ...leaderOf(at.x + away * step, at.y) },
        {
          x: at.x - away * step - size.width,
          y: middle,
          cost: far + 12 * away,
          ...leaderOf(at.x - away * step, at.y),
        },
        {
          x: at.x - size.width / 2,
          y: at.y - away * step - size.height,
          cost: far + 14 * away,
          ...leaderOf(at.x, at.y - away * step),
        },
      );
    }
  }
  return candidates;
}
