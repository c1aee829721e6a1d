/** The words in the plot: each engine's name and value, where it matches the air, where two are equal. */

import type { StudyAnswer } from '../../answer/model.ts';
import type { TypeSizes } from '../look/formats.ts';
import { formatAltitude, formatSpoken } from '../numbers/formatNumber.ts';
import type { Box } from '../scene/box.ts';
import type { Point } from '../scene/pathData.ts';
import { plainText } from '../scene/safeText.ts';
import type { SceneNode } from '../scene/scene.ts';
import { type AltitudeAxis, LINEAR_TOP } from './altitudeAxis.ts';
import { ambientAt, conditionAt } from './conditions.ts';
import { boxOfMark, curveName, leaderLabel, ring } from './curveLabels.ts';
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

/** Name and one value beside the curve, on two lines or on three. */
function nameLabel(
  curve: Curve,
  quantity: OverAltitudeQuantity,
  anchor: ValueAnchor | null,
  curves: readonly Curve[],
  room: LabelRoom,
  axis: AltitudeAxis,
  style: PanelStyle,
): SceneNode[] {
  const value = (text: string) => ({ text, size: 0.92 * style.type.label, weight: 400 as const });
  const name = { text: plainText(curve.engine.name), size: style.type.label, weight: 700 as const };
  const spoken = anchor ? formatSpoken(quantity, anchor.value) : '';
  const shapes = anchor
    ? [
        [name, value(`${spoken} ${anchor.where}`)],
        [name, value(spoken), value(anchor.where)],
      ]
    : [[name]];
  const preferred = anchor?.where === 'in vacuum' ? axis.y(30_000) : axis.y(2_500);
  return curveName(curve, shapes, curves, room, style, ({ y }) => 0.08 * Math.abs(y - preferred));
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
