/** The words in the plot of a sweep: names of the curves, best places, where two are equal, why there is no value. */

import type { Extreme, Hole, Sweep, ToldRange } from '../../answer/sweeps/model.ts';
import { showPlace, showValue } from '../../answer/sweeps/shown.ts';
import { wrapAtMost } from '../look/measureText.ts';
import type { Box } from '../scene/box.ts';
import type { Point } from '../scene/pathData.ts';
import { plainText } from '../scene/safeText.ts';
import type { SceneNode } from '../scene/scene.ts';
import { boxOfMark, curveName, leaderLabel, ring } from './curveLabels.ts';
import { marker, type Words, wordsAt, wordsSize } from './marks.ts';
import type { PanelStyle } from './overAltitudeAxes.ts';
import { type Candidate, LabelRoom } from './placeLabels.ts';
import type { DrawnCurve, PlaceOf } from './sweepCurves.ts';

/** Digits of a place that was sought, not stated. */
const FOUND = 3;

/** A hole as drawn. */
export interface DrawnHole {
  readonly hole: Hole;
  readonly box: Box;
  /** Curves that have no value there. */ readonly curves: readonly DrawnCurve[];
}

interface Marked {
  readonly point: Point;
  readonly lines: readonly string[];
  /** Only the mark is drawn where the words find no room; the finding says them. */ readonly sign: SceneNode;
}

export function sweepLabels(
  sweep: Sweep,
  curves: readonly DrawnCurve[],
  holes: readonly DrawnHole[],
  plot: Box,
  place: PlaceOf,
  style: PanelStyle,
): readonly SceneNode[] {
  const { type, line } = style;
  const frame = { ...plot, x: plot.x + 0.2 * type.label, width: plot.width - 0.4 * type.label };
  const obstacles = curves.flatMap(({ pieces }) => pieces.map((points) => ({ points, cost: 60 })));
  const room = new LabelRoom(frame, obstacles);
  const marks = [
    ...curves.flatMap((drawn) => extremeMarks(sweep, drawn, place, style)),
    ...crossingMarks(sweep, curves, place, style),
  ];
  for (const { point } of marks) room.keepClear(boxOfMark(point, 1.3 * line.marker));
  const reasons = holes.flatMap((drawn) => holeWords(drawn, curves.length, room, style));
  const along = (drawn: DrawnCurve): ((point: Point) => number) => {
    const points = drawn.pieces.flat();
    // Rather near the end, where curves are farthest apart, but not on the edge.
    const last = points[Math.floor(0.8 * (points.length - 1))];
    return ({ x, y }) => (last === undefined ? 0 : 0.05 * (Math.abs(x - last.x) + Math.abs(y - last.y)));
  };
  const names =
    curves.length < 2
      ? []
      : curves.flatMap((drawn) => {
          const text = plainText(drawn.name);
          const shapes = [1, 2, 3].map((most) =>
            wrapAtMost(
              text,
              most === 1 ? plot.width : (0.45 * plot.width) / (most - 1),
              type.label,
              700,
              most,
            ).map((words) => ({ text: words, size: type.label, weight: 700 as const })),
          );
          return curveName(drawn, shapes, curves, room, style, along(drawn));
        });
  return [
    ...reasons,
    ...names,
    ...marks.flatMap(({ point, lines, sign }) => [sign, ...leaderLabel(lines, point, room, frame, style)]),
  ];
}

/** Where it is best inside the range, ringed; at an end, a small sign. */
function extremeMarks(
  sweep: Sweep,
  { curve, style: own, name }: DrawnCurve,
  place: PlaceOf,
  { line }: PanelStyle,
): readonly Marked[] {
  if (curve.course === 'stays the same') return [];
  const whose = sweep.curves.length > 1 ? `${name}: ` : '';
  return (['highest', 'lowest'] as const).flatMap((which): Marked[] => {
    const extreme = curve[which];
    if (extreme === null) return [];
    const point = place(extreme.x, extreme.y);
    const value = showValue(curve, extreme.y).text;
    const where = `${sweep.range.label} ${extremePlace(sweep.range, extreme)}`;
    if (extreme.at === 'inside') {
      return [{ point, lines: [`${whose}${which}, ${value}`, `at ${where}`], sign: ring(point, line) }];
    }
    if (sweep.curves.length > 2) return [];
    const sign = marker(own, point.x, point.y, 0.7 * line.marker);
    return [{ point, lines: sweep.curves.length > 1 ? [value] : [value, `at ${where}`], sign }];
  });
}

export function extremePlace(range: ToldRange, { x, at }: Extreme): string {
  return showPlace(range, x, at === 'end' ? undefined : FOUND);
}

function crossingMarks(
  sweep: Sweep,
  curves: readonly DrawnCurve[],
  place: PlaceOf,
  { line }: PanelStyle,
): readonly Marked[] {
  return sweep.crossings.flatMap(({ x, y, curves: pair, jump }): Marked[] => {
    if (!pair.every((index) => curves.some(({ curve }) => curve === sweep.curves[index]))) return [];
    const point = place(x, y);
    const where = `${sweep.range.label} ${showPlace(sweep.range, x, FOUND)}`;
    const names = pair.map((index) => curves.find(({ curve }) => curve === sweep.curves[index])?.name ?? '');
    const who = curves.length > 2 ? [names.join(' and ')] : [];
    return [
      { point, lines: [...who, jump ? 'change places' : 'equal', `at ${where}`], sign: ring(point, line) },
    ];
  });
}

/** Why there is no value, inside the hatched stretch; else only the hatch, with the reason in the foot. */
function holeWords(
  { hole, box, curves }: DrawnHole,
  all: number,
  room: LabelRoom,
  { type }: PanelStyle,
): readonly SceneNode[] {
  const size = 0.85 * type.label;
  const who = curves.length === all ? 'no value' : `${curves.map(({ name }) => name).join(', ')}: no value`;
  const words = (text: string): Words => ({ text, size, weight: 400, fill: 'ink' });
  const width = box.width - 0.8 * type.label;
  if (width < 4 * size) return [];
  const full = wrapAtMost(plainText(`${capital(who)}: ${hole.problem.what}`), width, size, 400, 9).map(words);
  const brief = wrapAtMost(plainText(capital(who)), width, size, 400, 2).map(words);
  for (const lines of [full, brief]) {
    if (lines.some(({ text }) => text.endsWith('…'))) continue;
    const needed = wordsSize(lines);
    if (needed.width > width || needed.height > box.height) continue;
    const rows = 12;
    const candidates = Array.from(
      { length: rows },
      (_, i): Candidate => ({
        x: box.x + (box.width - needed.width) / 2,
        y: box.y + 0.3 * type.label + (i / rows) * (box.height - needed.height - 0.6 * type.label),
        cost: i,
      }),
    );
    const placed = room.place(needed.width, needed.height, 0.15 * type.label, candidates);
    if (placed) return wordsAt(lines, placed.box.x, placed.box.y, 'start', true);
  }
  return [];
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
