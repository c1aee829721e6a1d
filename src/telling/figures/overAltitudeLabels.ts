/** The words in the plot: each engine's name and value, where it matches the air, where two are equal. */

import type { StudyAnswer } from '../../answer/model.ts';
import type { LineSizes, TypeSizes } from '../look/formats.ts';
import { formatAltitude, formatSpoken } from '../numbers/formatNumber.ts';
import type { Box } from '../scene/box.ts';
import { type Point, segment } from '../scene/pathData.ts';
import { plainText } from '../scene/safeText.ts';
import type { SceneNode } from '../scene/scene.ts';
import { type AltitudeAxis, LINEAR_TOP } from './altitudeAxis.ts';
import { ambientAt, conditionAt } from './conditions.ts';
import { adapts } from './drawnEngines.ts';
import { marker, type Words, wordsAt, wordsSize } from './marks.ts';
import type { Altitude } from './options.ts';
import type { PanelStyle } from './overAltitudeAxes.ts';
import { type Curve, type OverAltitudeQuantity, quantityAt } from './overAltitudeCurves.ts';
import { type Candidate, IN_THE_WAY, LabelRoom, type Obstacle } from './placeLabels.ts';

/** The words in the plot: each engine's name and its value, where it matches the air, where two are equal. */
export function labelNodes(
  answer: StudyAnswer,
  curves: readonly Curve[],
  quantity: OverAltitudeQuantity,
  plot: Box,
  axis: AltitudeAxis,
  x: (value: number) => number,
  style: PanelStyle,
  cursorAt: Altitude | undefined,
): SceneNode[] {
  const { type, line } = style;
  const frame = { ...plot, x: plot.x + 0.2 * type.label, width: plot.width - 0.4 * type.label };
  const obstacles: Obstacle[] = curves.flatMap((curve) =>
    [...curve.pieces, ...curve.ifFull].map((points) => ({ points, cost: 60 })),
  );
  if (cursorAt !== undefined) {
    const y = axis.y(cursorAt);
    obstacles.push({ points: [plot.x, plot.x + plot.width].map((at) => ({ x: at, y })), cost: 60 });
  }
  const room = new LabelRoom(frame, obstacles);
  /** What lies off the scale has been cut off. */
  const onScale = <Mark extends { readonly point: Point }>(mark: Mark | null): Mark | null =>
    mark !== null && mark.point.x >= plot.x && mark.point.x <= plot.x + plot.width ? mark : null;
  const anchors = curves.map((curve) => onScale(valueAnchor(curve, quantity, axis, x)));
  const matches = curves.map((curve) => onScale(matchOf(curve, quantity, axis, x)));
  const ties = quantity === 'specificImpulse' ? tiesOf(answer, curves, axis, x) : [];
  for (const mark of [...anchors, ...matches]) {
    if (mark) room.keepClear(boxOfMark(mark.point, 1.25 * line.marker));
  }
  for (const { point } of ties) room.keepClear(boxOfMark(point, 1.3 * line.marker));
  const names = curves.flatMap((curve, i) =>
    nameLabel(curve, quantity, anchors[i] ?? null, curves, room, axis, style),
  );
  /** A mark that there is no room to explain is not drawn. */
  const explained = (mark: Marked | null | undefined, drawn: (point: Point) => SceneNode): SceneNode[] => {
    const words = mark ? leaderLabel(mark.lines, mark.point, room, frame, style) : [];
    return mark && words.length > 0 ? [drawn(mark.point), ...words] : [];
  };
  return [
    ...curves.flatMap((curve, i) => {
      const point = anchors[i]?.point;
      return point ? [marker(curve.style, point.x, point.y, line.marker)] : [];
    }),
    ...names,
    ...ties.flatMap((tie) => explained(tie, (point) => ring(point, line))),
    ...curves.flatMap((curve, i) =>
      explained(matches[i], (point) => marker(curve.style, point.x, point.y, line.marker)),
    ),
    ...curves.flatMap((curve) => curve.ifFull.flatMap((points) => ifFullLabel(curve, points, room, type))),
  ];
}

function boxOfMark(point: Point, radius: number): Box {
  return { x: point.x - radius, y: point.y - radius, width: 2 * radius, height: 2 * radius };
}

function ring(point: Point, line: LineSizes): SceneNode {
  return {
    kind: 'circle',
    x: point.x,
    y: point.y,
    radius: 1.15 * line.marker,
    stroke: 'ink',
    strokeWidth: line.leader,
  };
}

interface ValueAnchor {
  readonly point: Point;
  readonly where: string;
  readonly value: number;
}

/** Where the value said beside the name is read: at sea level if there is one, else in vacuum. */
function valueAnchor(
  curve: Curve,
  quantity: OverAltitudeQuantity,
  axis: AltitudeAxis,
  x: (value: number) => number,
): ValueAnchor | null {
  const ground = curve.rows[0];
  const space = curve.rows[curve.rows.length - 1];
  const low = ground ? quantityAt(quantity, ground) : null;
  if (low !== null) return { point: { x: x(low), y: axis.bottom }, where: 'at sea level', value: low };
  const high = space ? quantityAt(quantity, space) : null;
  return high === null ? null : { point: { x: x(high), y: axis.top }, where: 'in vacuum', value: high };
}

/** Name and one value beside the curve: on two lines, else on three, else apart with a line to the curve. */
function nameLabel(
  curve: Curve,
  quantity: OverAltitudeQuantity,
  anchor: ValueAnchor | null,
  curves: readonly Curve[],
  room: LabelRoom,
  axis: AltitudeAxis,
  { type, line }: PanelStyle,
): SceneNode[] {
  const fill = curve.style.colour;
  const name: Words = { text: plainText(curve.engine.name), size: type.label, weight: 700, fill };
  const value = (text: string): Words => ({ text, size: 0.92 * type.label, weight: 400, fill });
  const spoken = anchor ? formatSpoken(quantity, anchor.value) : '';
  const shapes: Words[][] = anchor
    ? [
        [name, value(`${spoken} ${anchor.where}`)],
        [name, value(spoken), value(anchor.where)],
      ]
    : [[name]];
  const gap = 0.2 * type.label;
  const preferred = anchor?.where === 'in vacuum' ? axis.y(30_000) : axis.y(2_500);
  for (const lines of shapes) {
    const size = wordsSize(lines);
    const placed = room.place(
      size.width,
      size.height,
      gap,
      besideCurve(curve, curves, size, preferred, type),
      IN_THE_WAY,
    );
    if (placed) return wordsAt(lines, placed.box.x, placed.box.y, 'start', true);
  }
  const lines = shapes[0] ?? [];
  const size = wordsSize(lines);
  const apart = apartFromCurve(curve, size, type, room);
  const placed =
    room.place(size.width, size.height, gap, apart, IN_THE_WAY) ??
    room.place(size.width, size.height, gap, apart);
  if (!placed?.candidate.leader) return [];
  const [from, to] = placed.candidate.leader;
  return [
    {
      kind: 'path',
      d: segment(from.x, from.y, to.x, to.y),
      stroke: fill,
      strokeWidth: line.leader,
    },
    ...wordsAt(lines, placed.box.x, placed.box.y, 'start', true),
  ];
}

interface Size {
  readonly width: number;
  readonly height: number;
}

function besideCurve(
  curve: Curve,
  curves: readonly Curve[],
  size: Size,
  preferred: number,
  type: TypeSizes,
): Candidate[] {
  const gap = 0.55 * type.label;
  return linesOf(curve).flatMap((point) =>
    (['left', 'right'] as const).flatMap((side) =>
      [-0.5, 0, -1].map((rise): Candidate => {
        const x = side === 'left' ? point.x - gap - size.width : point.x + gap;
        const y = point.y + rise * size.height;
        const edge = { x: side === 'left' ? x + size.width : x, y: y + size.height / 2 };
        const disliked = nearerCurve(curve, curves, edge) ? 200 : 0;
        return { x, y, cost: 0.08 * Math.abs(point.y - preferred) + disliked + (rise === -0.5 ? 0 : 3) };
      }),
    ),
  );
}

/** Its line ends on the curve but on no mark, which has words of its own. */
function apartFromCurve(curve: Curve, size: Size, type: TypeSizes, room: LabelRoom): Candidate[] {
  const inset = 0.15 * type.label;
  return linesOf(curve)
    .filter((point, i) => i % 4 === 0 && !room.isMarked(point))
    .flatMap((point) =>
      [3, 5, 8, 12].flatMap((away) =>
        [-1, 1].flatMap((side) =>
          [-3, 0, 3].map((rise): Candidate => {
            const edge = { x: point.x + side * away * type.label, y: point.y + rise * type.label };
            return {
              x: side < 0 ? edge.x - size.width : edge.x,
              y: edge.y - size.height / 2,
              cost: 20 * away + 5 * Math.abs(rise),
              leader: [{ x: edge.x - side * inset, y: edge.y }, point],
            };
          }),
        ),
      ),
    );
}

/** Points of the curve's own line, or of its continuation where it has none. */
function linesOf(curve: Curve): readonly Point[] {
  return (curve.pieces.length > 0 ? curve.pieces : curve.ifFull).flat();
}

/** True where another curve is nearer to a point than the curve it should belong to. */
function nearerCurve(own: Curve, all: readonly Curve[], point: Point): boolean {
  const mine = distanceTo(own, point);
  return all.some((curve) => curve !== own && distanceTo(curve, point) < mine);
}

function distanceTo(curve: Curve, point: Point): number {
  let least = Number.POSITIVE_INFINITY;
  for (const piece of [...curve.pieces, ...curve.ifFull])
    for (const p of piece) {
      const distance = (p.x - point.x) ** 2 + (p.y - point.y) ** 2;
      least = distance < least ? distance : least;
    }
  return least;
}

/** A place on a curve with something to say about it. */
interface Marked {
  readonly point: Point;
  readonly lines: readonly string[];
}

function matchOf(
  curve: Curve,
  quantity: OverAltitudeQuantity,
  axis: AltitudeAxis,
  x: (value: number) => number,
): Marked | null {
  const altitude = curve.engine.matched.altitude;
  if (altitude === null || altitude < 0 || altitude > LINEAR_TOP) return null;
  const row = conditionAt(curve.rows, curve.engine.matched.ambientPressure);
  const value = quantityAt(quantity, row);
  if (value === null) return null;
  const name = plainText(curve.engine.name);
  return {
    point: { x: x(value), y: axis.y(altitude) },
    lines: adapts(curve.engine)
      ? [`${name} matches`, `the air up to ${formatAltitude(altitude)}`]
      : [`${name}’s exit matches`, `the air at ${formatAltitude(altitude)}`],
  };
}

/** The first two places where the compared engines have the same specific impulse. */
function tiesOf(
  answer: StudyAnswer,
  curves: readonly Curve[],
  axis: AltitudeAxis,
  x: (value: number) => number,
): Marked[] {
  const base = curves.find((curve) => curve.engine.id === answer.comparison?.base);
  if (!base) return [];
  return (answer.comparison?.crossings ?? []).slice(0, 2).flatMap((altitude): Marked[] => {
    const value = quantityAt('specificImpulse', conditionAt(base.rows, ambientAt(altitude)));
    if (value === null) return [];
    const point = { x: x(value), y: axis.y(altitude) };
    return [{ point, lines: [`equal at ${formatAltitude(altitude)}`] }];
  });
}

/** Words at a distance from a point, with a line to it. */
function leaderLabel(
  texts: readonly string[],
  point: Point,
  room: LabelRoom,
  frame: Box,
  { type, line }: PanelStyle,
): SceneNode[] {
  const lines: Words[] = texts.map((text) => ({ text, size: 0.92 * type.label, weight: 400, fill: 'ink' }));
  const size = wordsSize(lines);
  const candidates: Candidate[] = [];
  for (const away of [1.8, 2.8, 4, 5.5, 6.5, 7.5, 8.5, 10])
    for (let turn = 0; turn < 32; turn++) {
      const angle = (turn * Math.PI) / 16;
      const edge = {
        x: point.x + away * type.label * Math.cos(angle),
        y: point.y + away * type.label * Math.sin(angle),
      };
      const left = Math.cos(angle) < 0;
      const x = left ? edge.x - size.width : edge.x;
      const y = edge.y - size.height / 2;
      const inset = 0.2 * type.label;
      candidates.push({
        x,
        y,
        cost: 10 * away + (Math.abs(Math.cos(angle)) < 0.3 ? 12 : 0) + (left ? 0 : 4),
        leader: [{ x: left ? edge.x + inset : edge.x - inset, y: edge.y }, point],
      });
    }
  const gap = 0.2 * type.label;
  const placed =
    room.place(size.width, size.height, gap, candidates, IN_THE_WAY) ??
    room.place(size.width, size.height, gap, anywhere(frame, size, point, type), IN_THE_WAY);
  if (!placed) return [];
  const [from, to] = placed.candidate.leader as readonly [Point, Point];
  const anchor = from.x > placed.box.x + placed.box.width / 2 ? 'end' : 'start';
  const x = anchor === 'end' ? placed.box.x + placed.box.width : placed.box.x;
  return [
    { kind: 'path', d: shortOf(from, to, 1.3 * line.marker), stroke: 'ink', strokeWidth: line.leader },
    ...wordsAt(lines, x, placed.box.y, anchor, true),
  ];
}

/** Every place in the frame, the nearest cheapest, with a line from the side that looks to the point. */
function anywhere(frame: Box, size: Size, point: Point, type: TypeSizes): Candidate[] {
  const step = 0.4 * type.label;
  const inset = 0.2 * type.label;
  const candidates: Candidate[] = [];
  for (let y = frame.y; y + size.height <= frame.y + frame.height; y += step)
    for (let x = frame.x; x + size.width <= frame.x + frame.width; x += step) {
      const right = x + size.width / 2 < point.x;
      const from = { x: right ? x + size.width + inset : x - inset, y: y + size.height / 2 };
      const away = Math.hypot(from.x - point.x, from.y - point.y) / type.label;
      // A line that turns back under its own words would cross them out.
      if (right === from.x < point.x) candidates.push({ x, y, cost: 8 * away, leader: [from, point] });
    }
  return candidates;
}

/** A line that stops this far before its end. */
function shortOf(from: Point, to: Point, by: number): string {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const t = length > by ? (length - by) / length : 0;
  return segment(from.x, from.y, from.x + t * (to.x - from.x), from.y + t * (to.y - from.y));
}

function ifFullLabel(curve: Curve, points: readonly Point[], room: LabelRoom, type: TypeSizes): SceneNode[] {
  const lines: Words[] = [
    { text: 'if it flowed full', size: 0.85 * type.label, weight: 400, fill: curve.style.colour },
  ];
  const size = wordsSize(lines);
  const gap = 0.45 * type.label;
  const candidates = points.flatMap((point, i): Candidate[] =>
    (['left', 'right'] as const).flatMap((side) =>
      [-1.25, -0.5, 0.25].map((rise) => ({
        x: side === 'left' ? point.x - gap - size.width : point.x + gap,
        y: point.y + rise * size.height,
        cost: 2 * Math.abs(i - points.length / 2) + (side === 'right' ? 1 : 0),
      })),
    ),
  );
  const placed = room.place(size.width, size.height, 0.15 * type.label, candidates, IN_THE_WAY);
  return placed ? wordsAt(lines, placed.box.x, placed.box.y, 'start', true) : [];
}
