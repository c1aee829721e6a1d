/** One quantity over two inputs, in a box: lines of equal value with their values, best places, hatched where there is none. */

import type { MapExtreme, SweepMap } from '../../answer/sweeps/model.ts';
import { showPlace, showValue, unitOf } from '../../answer/sweeps/shown.ts';
import { ENGINE_STYLES } from '../look/engineStyles.ts';
import { wrapAtMost } from '../look/measureText.ts';
import { formatNumber } from '../numbers/formatNumber.ts';
import type { Box } from '../scene/box.ts';
import { type Point, polyline } from '../scene/pathData.ts';
import { plainText } from '../scene/safeText.ts';
import { group, type SceneNode } from '../scene/scene.ts';
import { boxOfMark, leaderLabel, ring } from './curveLabels.ts';
import { marker, type Words, wordsAt, wordsSize } from './marks.ts';
import type { FigureOptions } from './options.ts';
import type { PanelStyle } from './overAltitudeAxes.ts';
import { LabelRoom } from './placeLabels.ts';
import { type Plot, plotIn } from './plotAxes.ts';
import { hatchOf } from './sweepCurves.ts';
import { rangeSide } from './sweepPanel.ts';

/** Digits of a place that was sought, not stated. */
const FOUND = 3;

export function mapPanel(
  map: SweepMap,
  box: Box,
  style: PanelStyle,
  styles: FigureOptions['styles'] = {},
): readonly SceneNode[] {
  const { line } = style;
  const own = styles[map.engines[0] ?? ''] ?? ENGINE_STYLES[0];
  const plot = plotIn(box, rangeSide(map.rangeAcross), rangeSide(map.rangeUp), style);
  const levels = map.levels.map(({ value, lines }) => ({
    text: levelText(map, value),
    lines: lines.map((points) => points.map(({ x, y }) => ({ x: plot.x(x), y: plot.y(y) }))),
  }));
  const paths = levels.flatMap(({ lines }, i) =>
    lines.map(
      (points): SceneNode => ({
        kind: 'path',
        d: polyline(points),
        stroke: own.colour,
        // Every second one is thicker, so that steps can be counted.
        strokeWidth: (i % 2 === 0 ? 0.6 : 0.35) * line.curve,
        join: 'round',
      }),
    ),
  );
  return [
    group('grid', plot.grid),
    group('holes', holeNodes(map, plot, style)),
    group('axis', plot.words),
    group('levels', paths),
    group('labels', mapLabels(map, levels, plot, style, own.colour)),
  ];
}

function levelText(map: SweepMap, value: number): string {
  const unit = unitOf(map, [value]);
  const number = formatNumber(value * unit.perSI, 4, true);
  return unit.symbol === '' ? number : `${number}\u00a0${unit.symbol}`;
}

interface DrawnLevel {
  readonly text: string;
  readonly lines: readonly (readonly Point[])[];
}

/** Words may stand on a line of equal value, where there is no room beside it. */
const LINE_COVERED = 8;

function mapLabels(
  map: SweepMap,
  levels: readonly DrawnLevel[],
  { box, x, y }: Plot,
  style: PanelStyle,
  colour: (typeof ENGINE_STYLES)[number]['colour'],
): readonly SceneNode[] {
  const { type, line } = style;
  const inset = 0.2 * type.label;
  const frame = { x: box.x + inset, y: box.y, width: box.width - 2 * inset, height: box.height };
  const obstacles = levels.flatMap(({ lines }) => lines.map((points) => ({ points, cost: LINE_COVERED })));
  const room = new LabelRoom(frame, obstacles);
  const places = (['highest', 'lowest'] as const).flatMap((which) => {
    const extreme = map[which];
    return extreme === null ? [] : [{ which, extreme, point: { x: x(extreme.x), y: y(extreme.y) } }];
  });
  for (const { point } of places) room.keepClear(boxOfMark(point, 1.3 * line.marker));
  const told = places.flatMap(({ which, extreme, point }) => [
    extreme.at === 'inside'
      ? ring(point, line)
      : marker(ENGINE_STYLES[3], point.x, point.y, 0.7 * line.marker),
    ...leaderLabel(extremeLines(map, which, extreme), point, room, frame, style),
  ]);
  return [
    ...levels.flatMap((level) => levelLabels(level, room, box, type.label, colour)),
    ...told,
    ...holeReasons(map, { box, x, y }, room, type.label),
  ];
}

function extremeLines(map: SweepMap, which: string, { x, y, value, at }: MapExtreme): readonly string[] {
  const found = `${which}, ${showValue(map, value).text}`;
  // On the edge its place can be read off.
  if (at !== 'inside') return [found];
  return [
    found,
    `at ${map.rangeAcross.label} ${showPlace(map.rangeAcross, x, FOUND)}`,
    `and ${map.rangeUp.label} ${showPlace(map.rangeUp, y, FOUND)}`,
  ];
}

/** The value on its line, once a line that is long enough; rather in the middle of the plot. */
function levelLabels(
  { text, lines }: DrawnLevel,
  room: LabelRoom,
  box: Box,
  label: number,
  fill: Words['fill'],
): readonly SceneNode[] {
  const words: Words = { text, size: 0.85 * label, weight: 600, fill };
  const size = wordsSize([words]);
  return lines.flatMap((points) => {
    const length = points.reduce((sum, point, i) => {
      const before = points[i - 1];
      return before === undefined ? sum : sum + Math.hypot(point.x - before.x, point.y - before.y);
    }, 0);
    if (length < 1.5 * size.width) return [];
    const candidates = points.map((point) => ({
      x: point.x - size.width / 2,
      y: point.y - size.height / 2,
      cost: Math.abs(point.x - box.x - 0.6 * box.width) + 0.3 * Math.abs(point.y - box.y - box.height / 2),
    }));
    const placed = room.place(size.width, size.height, 0.1 * label, candidates);
    return placed === null ? [] : wordsAt([words], placed.box.x, placed.box.y, 'start', true);
  });
}

/** Half way to the neighbours on either side, within the plot. */
function edges(values: readonly number[], at: (value: number) => number): readonly [number, number][] {
  return values.map((value, i): [number, number] => {
    const [before, after] = [values[i - 1], values[i + 1]];
    return [
      before === undefined ? at(value) : (at(before) + at(value)) / 2,
      after === undefined ? at(value) : (at(after) + at(value)) / 2,
    ];
  });
}

/** One box for each row's stretch without values. */
function holeBoxes(
  places: readonly number[],
  map: SweepMap,
  { x, y }: Pick<Plot, 'x' | 'y'>,
): readonly Box[] {
  const columns = edges(map.across, x);
  const rows = edges(map.up, y);
  const known = new Set(places);
  const boxes: Box[] = [];
  rows.forEach(([bottom, top], row) => {
    let from = null as number | null;
    columns.forEach(([left, right], column) => {
      const place = row * columns.length + column;
      if (!known.has(place)) return;
      from ??= left;
      if (column + 1 < columns.length && known.has(place + 1)) return;
      boxes.push({ x: from, y: top, width: right - from, height: bottom - top });
      from = null;
    });
  });
  return boxes.filter(({ width, height }) => width > 0 && height > 0);
}

function holeNodes(map: SweepMap, plot: Plot, { line }: PanelStyle): readonly SceneNode[] {
  return map.holes.flatMap(({ places }, i) =>
    holeBoxes(places, map, plot).map(
      (box): SceneNode => ({ kind: 'rect', ...box, fill: hatchOf('ink-3', i % 2 === 0 ? 45 : -45, line) }),
    ),
  );
}

/** `No value`, and why, inside the widest stretch that holds it. */
function holeReasons(
  map: SweepMap,
  plot: Pick<Plot, 'box' | 'x' | 'y'>,
  room: LabelRoom,
  label: number,
): readonly SceneNode[] {
  const size = 0.85 * label;
  return map.holes.flatMap(({ places, problem }) => {
    const widest = [...holeBoxes(places, map, plot)].sort((a, b) => b.width - a.width);
    for (const said of [`No value: ${problem.what}`, 'No value']) {
      for (const box of widest.slice(0, 6)) {
        if (box.width < 5 * size) continue;
        const lines = wrapAtMost(plainText(said), box.width - size, size, 400, 5).map(
          (text): Words => ({ text, size, weight: 400, fill: 'ink' }),
        );
        if (lines.some(({ text }) => text.endsWith('…'))) continue;
        const needed = wordsSize(lines);
        const candidates = [0, 0.25, 0.5, 0.75, 1].map((share) => ({
          x: box.x + size / 2,
          y: box.y - share * needed.height,
          cost: Math.abs(share - 0.5),
        }));
        const placed = room.place(needed.width, needed.height, 0.1 * label, candidates);
        if (placed) return wordsAt(lines, placed.box.x, placed.box.y, 'start', true);
      }
    }
    return [];
  });
}
