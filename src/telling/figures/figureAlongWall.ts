/** Pressure along the wall, injector face to lip, on a logarithmic scale, with the air outside. */

import { scaleLinear, scaleLog } from 'd3-scale';
import type { StudyAnswer } from '../../answer/model.ts';
import { layoutOf, type TypeSizes } from '../look/formats.ts';
import { textWidth } from '../look/measureText.ts';
import { formatNumber, formatPressure } from '../numbers/formatNumber.ts';
import { type Box, grown } from '../scene/box.ts';
import { type Point, polyline, segment } from '../scene/pathData.ts';
import { plainText } from '../scene/safeText.ts';
import { group, type Scene, type SceneNode } from '../scene/scene.ts';
import { ambientAt, conditionAt, rowsOf } from './conditions.ts';
import { type DrawnEngine, drawnEngines } from './drawnEngines.ts';
import { footOf, lipPressure, wallFinding, whereWords } from './findings.ts';
import { frame } from './frame.ts';
import { dashOf, marker, type Words, wordsAt, wordsSize } from './marks.ts';
import { measuredMarks, measuredWords, seriesFor } from './measuredMarks.ts';
import type { FigureOptions } from './options.ts';
import type { PanelStyle } from './overAltitudeAxes.ts';
import { type Candidate, LabelRoom, type Obstacle } from './placeLabels.ts';
import { type LettingGo, lettingGo, separationBands, separationBandWords } from './separationBands.ts';

/** What stands still while the altitude moves, where the figure is a part of a clip. */
export interface StillWall {
  readonly title: string;
  readonly subtitle: string;
  /** In the foot, of what is hatched. */ readonly hatched: string;
  /** [Pa] lowest on the scale */ readonly low: number;
  /** What stands above the plot, and the room that it takes [px]. */ readonly above: {
    readonly height: number;
    readonly nodesAt: (x: number, y: number) => readonly SceneNode[];
  };
}

/** [Pa] the lowest on any wall at the altitude of the options */
export function lowestOnWalls(answer: StudyAnswer, options: FigureOptions): number {
  const ambient = ambientAt(options.altitude ?? 0);
  const engines = drawnEngines(answer, 4).engines.map((one) => withWallHere(one, ambient, options));
  const pressures = engines.flatMap(({ engine }) => engine.wall.map(({ pressure }) => pressure));
  return Math.min(...pressures.filter((pressure) => pressure > 0));
}

export function pressureAlongWall(answer: StudyAnswer, options: FigureOptions, still?: StillWall): Scene {
  const layout = layoutOf(options.size);
  const { engines: drawn, leftOut } = drawnEngines(answer, 4);
  const altitude = options.altitude ?? 0;
  const ambient = ambientAt(altitude);
  const engines = drawn.map((one) => withWallHere(one, ambient, options));
  const measured = seriesFor(options.measured, engines, 'wall.pressure', ['wall.axial']);
  const onPlug = engines.some(({ engine }) => engine.contour.plug !== undefined);
  const loose = lettingGo(engines, ambient, options);
  const title = options.title ?? still?.title ?? wallFinding(engines);
  const around = frame(
    layout,
    {
      title,
      subtitle:
        still?.subtitle ??
        `Pressure on the wall from the injector face to the lip, the gas filling the nozzle${onPlug ? `; on a plug, ${whereWords(altitude).replace(/^(At|In)/, (word: string) => word.toLowerCase())}` : ''}`,
      foot: footOf(
        answer,
        engines,
        leftOut,
        [
          ...(still === undefined ? separationBandWords(loose) : [still.hatched]),
          ...measuredWords(measured, isOnWall(engines)),
        ],
        ['losses', 'nozzle-thrust', 'nozzle-separation'],
      ),
    },
    options,
  );
  return {
    width: layout.width,
    height: layout.height,
    title,
    description: describe(answer, engines, ambient),
    theme: options.theme,
    transparent: options.transparent ?? false,
    children: [
      ...panel(engines, ambient, lowered(around.content, still?.above.height ?? 0), layout, {
        measured,
        loose,
        low: still?.low ?? null,
      }),
      ...around.nodes,
      ...(still?.above.nodesAt(around.content.x, around.content.y) ?? []),
    ],
  };
}

const lowered = (box: Box, above: number): Box => ({ ...box, y: box.y + above, height: box.height - above });

/** An engine whose plug feels the air, with the pressure on its wall as it is here: the first of each line across its gas. */
function withWallHere(drawn: DrawnEngine, ambient: number, options: FigureOptions): DrawnEngine {
  const { engine } = drawn;
  if (engine.contour.plug === undefined) return drawn;
  const { field } = conditionAt(rowsOf(engine, options), ambient);
  if (field === undefined) return drawn;
  const ahead = engine.wall.filter((_, i) => engine.contour.plug?.wall[i]?.part !== 'nozzle');
  const end = engine.wall[engine.wall.length - 1]!;
  const along = field.map(([onWall]) => ({ ...end, ...onWall!, wallPressure: onWall!.pressure }));
  return { ...drawn, engine: { ...engine, wall: [...ahead, ...along] } };
}

/** What the wall ends in. */
function endWord({ contour: { plug } }: DrawnEngine['engine']): string {
  return plug === undefined ? 'lip' : plug.baseRadius > 0 ? 'cut' : 'tip';
}

function describe(answer: StudyAnswer, engines: readonly DrawnEngine[], ambient: number): string {
  const parts = engines.map(
    ({ engine }) =>
      `${engine.name}: ${formatPressure(engine.chamber.pressure)} in the chamber, ${formatPressure(lipPressure(engine))} on the wall at the ${endWord(engine)}.`,
  );
  return `Pressure on a logarithmic scale over the distance from the throat. Air outside ${formatPressure(ambient)}. ${parts.join(' ')} ${answer.caution}`;
}

/** [m] from the throat: where the first of the walls begins, and where the last one ends. */
function wallEnds(engines: readonly DrawnEngine[]): [number, number] {
  const places = engines.flatMap(({ engine }) => engine.wall.map((point) => point.axial));
  return [Math.min(...places), Math.max(...places)];
}

/** A logarithmic scale has no place for a pressure of nothing. */
function isOnWall(engines: readonly DrawnEngine[]) {
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

function panel(
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
    group('labels', wordsIn(engines, lowest === null ? ambient : 0, plot, x, y, style)),
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

function pointsOf(
  engine: DrawnEngine['engine'],
  x: (axial: number) => number,
  y: (pressure: number) => number,
): Point[] {
  return engine.wall.map((point) => ({ x: x(point.axial), y: y(point.pressure) }));
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

/** The words in the plot: the air's at its line, name and lip pressure near each curve's end, clear of all lines. */
function wordsIn(
  engines: readonly DrawnEngine[],
  ambient: number,
  plot: Box,
  x: (axial: number) => number,
  y: (pressure: number) => number,
  style: PanelStyle,
): SceneNode[] {
  const lines = engines.map(({ engine }) => pointsOf(engine, x, y));
  const obstacles: Obstacle[] = lines.map((points) => ({ points, cost: 60 }));
  if (ambient > 0) {
    const ends = [plot.x, plot.x + plot.width].map((at) => ({ x: at, y: y(ambient) }));
    // The air's thin line is a lesser evil behind words than a curve.
    obstacles.push({ points: ends, cost: 30 });
  }
  const room = new LabelRoom(plot, obstacles);
  for (const points of lines) {
    const end = points.at(-1);
    if (end) room.keepClear(grown({ x: end.x, y: end.y, width: 0, height: 0 }, 1.3 * style.line.marker));
  }
  return [
    ...(ambient > 0 ? airWords(ambient, plot, y(ambient), room, style.type) : []),
    ...nameWords(engines, lines, room, style),
  ];
}

function airWords(ambient: number, plot: Box, at: number, room: LabelRoom, type: TypeSizes): SceneNode[] {
  const words: Words[] = [
    { text: `air outside, ${formatPressure(ambient)}`, size: 0.9 * type.label, weight: 400, fill: 'ink' },
  ];
  const size = wordsSize(words);
  const candidates: Candidate[] = [];
  for (let step = 0; step <= 20; step++)
    for (const above of [true, false])
      candidates.push({
        x: plot.x + 0.3 * type.label + (step / 20) * (plot.width - size.width - 0.6 * type.label),
        y: above ? at - size.height - 0.1 * type.label : at + 0.1 * type.label,
        cost: step + (above ? 0 : 3),
      });
  const placed = room.place(size.width, size.height, 0.05 * type.label, candidates);
  return placed ? wordsAt(words, placed.box.x, placed.box.y, 'start', true) : [];
}

function nameWords(
  engines: readonly DrawnEngine[],
  lines: readonly (readonly Point[])[],
  room: LabelRoom,
  { type, line }: PanelStyle,
): SceneNode[] {
  return engines.flatMap(({ engine, style }, i) => {
    const words: Words[] = [
      { text: plainText(engine.name), size: type.label, weight: 700, fill: style.colour },
      {
        text: `${formatPressure(lipPressure(engine))} at the ${endWord(engine)}`,
        size: 0.9 * type.label,
        weight: 400,
        fill: 'ink',
      },
    ];
    const size = wordsSize(words);
    const end = lines[i]?.at(-1);
    if (!end) return [];
    const placed = room.place(size.width, size.height, 0.2 * type.label, aroundEnd(end, size, type.label));
    if (!placed) return [];
    const [from, to] = placed.candidate.leader ?? [];
    const leader: SceneNode[] =
      from && to
        ? [
            {
              kind: 'path',
              d: segment(from.x, from.y, to.x, to.y),
              stroke: style.colour,
              strokeWidth: line.leader,
            },
          ]
        : [];
    return [...leader, ...wordsAt(words, placed.box.x, placed.box.y, 'start', true)];
  });
}

/** Places above and below a curve's end, the nearest first; with a line to it where they stand apart. */
function aroundEnd(
  end: Point,
  size: { readonly width: number; readonly height: number },
  step: number,
): Candidate[] {
  const candidates: Candidate[] = [];
  for (const rise of [0.7, 1.2, 2, 3, 4, 5, 5.5, 6, 6.5, 7, 8, 9, 10, 11, 12, 13, 14, 15])
    for (const up of [true, false])
      for (const back of [0, 0.25, 0.5, 0.75, 1, 1.3]) {
        const x = end.x - back * size.width - (back >= 1 ? 0.5 * step : 0);
        const y = up ? end.y - rise * step - size.height : end.y + rise * step;
        const edge = { x: Math.min(Math.max(end.x, x), x + size.width), y: up ? y + size.height : y };
        const apart = rise > 1.2;
        candidates.push({
          x,
          y,
          cost: 12 * rise + (up ? 0 : 6) + 4 * Math.abs(back - 0.5),
          ...(apart ? { leader: [edge, end] as const } : {}),
        });
      }
  return candidates;
}
