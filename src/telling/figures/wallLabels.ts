/** The words in the plot of the pressure along walls, clear of all lines. */

import type { TypeSizes } from '../look/formats.ts';
import { formatPressure } from '../numbers/formatNumber.ts';
import { type Box, grown } from '../scene/box.ts';
import { type Point, segment } from '../scene/pathData.ts';
import { plainText } from '../scene/safeText.ts';
import type { SceneNode } from '../scene/scene.ts';
import type { DrawnEngine } from './drawnEngines.ts';
import { lipPressure } from './findings.ts';
import { type Words, wordsAt, wordsSize } from './marks.ts';
import type { PanelStyle } from './overAltitudeAxes.ts';
import { type Candidate, LabelRoom, type Obstacle } from './placeLabels.ts';

/** What the wall ends in. */
export function endWord({ contour: { plug } }: DrawnEngine['engine']): string {
  return plug === undefined ? 'lip' : plug.baseRadius > 0 ? 'cut' : 'tip';
}

/** Of the wall, on the plot. */
export function pointsOf(
  engine: DrawnEngine['engine'],
  x: (axial: number) => number,
  y: (pressure: number) => number,
): Point[] {
  return engine.wall.map((point) => ({ x: x(point.axial), y: y(point.pressure) }));
}

/** The words in the plot: the air's at its line, name and lip pressure near each curve's end, clear of all lines. */
export function wallWords(
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
