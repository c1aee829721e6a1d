/** Rows of bars on one scale: what each is of stands above it, its value at its end, what it may be as a whisker. */

import type { EngineStyle } from '../look/engineStyles.ts';
import { textWidth, wrapAtMost } from '../look/measureText.ts';
import type { Box } from '../scene/box.ts';
import { segment } from '../scene/pathData.ts';
import { plainText } from '../scene/safeText.ts';
import { group, type SceneNode } from '../scene/scene.ts';
import { marker } from './marks.ts';
import type { PanelStyle } from './overAltitudeAxes.ts';

export interface Bar {
  readonly style: EngineStyle;
  /** On the one scale of all bars. */ readonly value: number;
  /** Ends of what it may be. */ readonly low?: number;
  readonly high?: number;
  /** As said at its end. */ readonly text: string;
}

export interface BarRow {
  readonly label: string;
  readonly bars: readonly Bar[];
}

/**
 * Room for a column of labels beside the bars, in label sizes: less, and they stand above them. Of the width it takes a share,
 * and at most a larger one where the smallest letters do not fit into that.
 */
const BESIDE = { from: 22, share: 0.46, most: 0.62 } as const;

/** The rows fill the box from above; bars to the left of the upright line are below nothing. */
export function barRows(rows: readonly BarRow[], box: Box, style: PanelStyle): readonly SceneNode[] {
  const { type, line } = style;
  const counts = rows.reduce((sum, { bars }) => sum + bars.length, 0);
  const beside = box.width > BESIDE.from * type.label;
  const tallest = sizeOf(
    beside ? rows.length * 0.45 + 1.2 * counts : 1.75 * rows.length + 1.2 * counts,
    box.height,
    type.label,
    type.foot,
  );
  const widestAt = (size: number): number =>
    Math.max(...rows.map(({ label }) => textWidth(plainText(label), size, 400))) + 0.6 * size;
  // A row of one bar has one line of words.
  const most = BESIDE.share * box.width * (counts > rows.length ? 2 : 1);
  const size = beside ? Math.max(type.foot, tallest * Math.min(1, most / widestAt(tallest))) : tallest;
  const share = size > type.foot || counts > rows.length ? BESIDE.share : BESIDE.most;
  const column = beside ? Math.min(share * box.width, widestAt(size)) : 0;
  const heading = beside ? 0 : 1.3 * size;
  const left = rows.length * heading + 1.2 * size * counts;
  const gap = Math.max(0, Math.min(0.8 * size, (box.height - left) / rows.length));
  const each = Math.min(1.7 * size, (box.height - rows.length * (heading + gap)) / Math.max(1, counts));
  const ends = rows.flatMap(({ bars }) =>
    bars.flatMap(({ value, low, high }) => [value, low ?? value, high ?? value]),
  );
  const [least, greatest] = [Math.min(0, ...ends), Math.max(0, ...ends)];
  const texts = rows.flatMap(({ bars }) => bars.map(({ text }) => textWidth(text, size, 600)));
  const room = Math.max(0, ...texts) + 0.6 * size;
  const start = box.x + column + 2.2 * line.marker;
  const scale = (box.x + box.width - start - room) / (greatest - least || 1);
  const zero = start - least * scale;
  const nodes: SceneNode[] = [];
  let y = box.y;
  for (const { label, bars } of rows) {
    const height = bars.length * each;
    nodes.push(...labelNodes(label, { x: box.x, y, width: column || box.width, height }, size, beside));
    y += heading;
    nodes.push({
      kind: 'path',
      d: segment(zero, y, zero, y + height),
      stroke: 'rule-2',
      strokeWidth: line.leader,
    });
    for (const bar of bars) {
      nodes.push(...barNodes(bar, { start, zero, scale, y, each, size }, style));
      y += each;
    }
    y += gap;
  }
  return [group('bars', nodes)];
}

/** Beside its bars, at their middle, in one or two lines; or in one line above them. */
function labelNodes(label: string, box: Box, size: number, beside: boolean): readonly SceneNode[] {
  const most = beside ? Math.max(1, Math.floor((1.15 * box.height) / (1.12 * size))) : 1;
  const lines = wrapAtMost(
    plainText(label),
    box.width - (beside ? 0.4 * size : 0),
    size,
    400,
    Math.min(2, most),
  );
  const first = beside
    ? box.y + box.height / 2 - 0.56 * size * lines.length + 0.9 * size
    : box.y + 0.92 * size;
  return lines.map((text, i) => ({
    kind: 'text',
    x: box.x,
    y: first + 1.12 * size * i,
    text,
    size,
    weight: 400,
    anchor: 'start',
    fill: 'ink',
  }));
}

/** As large as the room allows, never below the smallest that may be read. */
function sizeOf(lines: number, height: number, most: number, least: number): number {
  return Math.max(least, Math.min(most, height / lines));
}

interface BarPlace {
  /** Left end of the scale. */ readonly start: number;
  readonly zero: number;
  readonly scale: number;
  readonly y: number;
  readonly each: number;
  readonly size: number;
}

function barNodes(bar: Bar, place: BarPlace, { line }: PanelStyle): SceneNode[] {
  const { zero, scale, y, each, size, start } = place;
  const at = (value: number): number => zero + value * scale;
  const height = Math.min(0.62 * each, size);
  const middle = y + 0.5 * each;
  const [from, to] = [Math.min(zero, at(bar.value)), Math.max(zero, at(bar.value))];
  const whisker = bar.low !== undefined && bar.high !== undefined && bar.low !== bar.high;
  const end = Math.max(to, whisker ? at(bar.high!) : to, zero);
  const tick = 0.4 * height;
  return [
    {
      kind: 'rect',
      x: from,
      y: middle - height / 2,
      width: to - from,
      height,
      fill: bar.style.colour,
      fillOpacity: 0.3,
      stroke: bar.style.colour,
      strokeWidth: line.leader,
    },
    marker(bar.style, start - 1.2 * line.marker, middle, 0.75 * line.marker),
    ...(whisker
      ? [
          {
            kind: 'path' as const,
            d:
              segment(at(bar.low!), middle, at(bar.high!), middle) +
              segment(at(bar.low!), middle - tick, at(bar.low!), middle + tick) +
              segment(at(bar.high!), middle - tick, at(bar.high!), middle + tick),
            stroke: 'ink' as const,
            strokeWidth: line.plumb,
          },
        ]
      : []),
    {
      kind: 'text',
      x: end + 0.35 * size,
      y: middle + 0.34 * size,
      text: bar.text,
      size,
      weight: 600,
      anchor: 'start',
      fill: 'ink',
    },
  ];
}
