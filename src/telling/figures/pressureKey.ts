/** The pressure ramp as a bar with its numbers, and where the outside air stands on it. */

import { textWidth } from '../look/measureText.ts';
import { PRESSURE_STEPS, pressureStepStart } from '../look/pressureRamp.ts';
import { formatPressure } from '../numbers/formatNumber.ts';
import type { Box } from '../scene/box.ts';
import { rectangle, segment } from '../scene/pathData.ts';
import type { SceneNode, TextNode } from '../scene/scene.ts';
import type { PanelStyle } from './overAltitudeAxes.ts';

const LABELLED = [1e4, 1e5, 1e6, 1e7];
const LOWEST = pressureStepStart(1);
const LOG_LOW = Math.log(LOWEST);
const LOG_HIGH = Math.log(pressureStepStart(PRESSURE_STEPS + 1));

/** Share of the way from the lowest to the highest pressure of the ramp. */
const shareOf = (pressure: number): number => (Math.log(pressure) - LOG_LOW) / (LOG_HIGH - LOG_LOW);

/** Words may come to lie on the wash: ink with a halo only. */
function word(
  text: string,
  x: number,
  y: number,
  anchor: TextNode['anchor'],
  size: number,
  weight: 400 | 600 = 400,
): TextNode {
  return { kind: 'text', x, y, text, size, weight, anchor, fill: 'ink', halo: true };
}

/** Height of the key along the foot at a type size. */
export const pressureKeyHeight = (size: number): number => 3.2 * size;

/** From left to right into a box; `ambient` [Pa] is marked and said where it lies on the ramp. */
export function pressureKey(box: Box, ambient: number, { type, line }: PanelStyle): SceneNode[] {
  const size = type.small;
  const bar = { x: box.x, y: box.y + 1.3 * size, width: box.width, height: 0.65 * size };
  const x = (pressure: number): number => bar.x + bar.width * shareOf(pressure);
  const name = 'gas and air, bar';
  const nodes: SceneNode[] = [
    ...steps((step) => ({
      x: x(pressureStepStart(step)),
      y: bar.y,
      width: bar.width / PRESSURE_STEPS + 0.5,
      height: bar.height,
    })),
    frameOf(bar, line.grid),
    word(name, bar.x + bar.width, box.y + 0.85 * size, 'end', size),
    ...LABELLED.map((pressure) =>
      word(String(pressure / 1e5), x(pressure), bar.y + bar.height + size, 'middle', size),
    ),
  ];
  if (ambient < LOWEST) return nodes;
  const text = `air ${formatPressure(ambient)}`;
  const half = textWidth(text, size, 600) / 2;
  const room = bar.x + bar.width - textWidth(name, size, 400) - 0.5 * size;
  const middle = Math.max(bar.x + half, Math.min(x(ambient), room - half));
  return [
    ...nodes,
    word(text, middle, box.y + 0.85 * size, 'middle', size, 600),
    {
      kind: 'path',
      d: segment(x(ambient), bar.y - 0.25 * size, x(ambient), bar.y + bar.height),
      stroke: 'ink',
      strokeWidth: line.plumb,
    },
  ];
}

/** Width left of the upright bar, for the air's pressure. */
const sayWidth = (size: number): number => textWidth('0.033', size, 600) + 0.7 * size;
const barWidth = (size: number): number => 0.65 * size;

/** Width of the upright key: the air's pressure, the bar, the numbers. */
export const pressureKeyUprightWidth = (size: number): number =>
  sayWidth(size) + barWidth(size) + 0.4 * size + textWidth('100', size, 400);

/** From the lowest pressure at the bottom to the highest at the top. */
export function pressureKeyUpright(box: Box, ambient: number, { type, line }: PanelStyle): SceneNode[] {
  const size = type.small;
  const head = 2.5 * size;
  const bar = {
    x: box.x + sayWidth(size),
    y: box.y + head,
    width: barWidth(size),
    height: box.height - head,
  };
  const y = (pressure: number): number => bar.y + bar.height * (1 - shareOf(pressure));
  const middle = bar.x + bar.width / 2;
  const nodes: SceneNode[] = [
    ...steps((step) => ({
      x: bar.x,
      y: y(pressureStepStart(step + 1)),
      width: bar.width,
      height: bar.height / PRESSURE_STEPS + 0.5,
    })),
    frameOf(bar, line.grid),
    word('gas and', middle, box.y + 0.8 * size, 'middle', size),
    word('air, bar', middle, box.y + 1.95 * size, 'middle', size),
    ...LABELLED.map((pressure) =>
      word(String(pressure / 1e5), bar.x + bar.width + 0.4 * size, y(pressure) + 0.33 * size, 'start', size),
    ),
  ];
  if (ambient < LOWEST) return nodes;
  const at = y(ambient);
  const end = bar.x - 0.45 * size;
  // Two lines astride the mark; low on the ramp both above it, so that they stay over the foot.
  const first = Math.min(at - 0.2 * size, box.y + box.height - 1.2 * size);
  return [
    ...nodes,
    word('air', end, first, 'end', size, 600),
    word(formatPressure(ambient).replace(/\u00a0bar$/, ''), end, first + 1.1 * size, 'end', size, 600),
    {
      kind: 'path',
      d: segment(bar.x - 0.3 * size, at, bar.x + bar.width, at),
      stroke: 'ink',
      strokeWidth: line.plumb,
    },
  ];
}

function steps(place: (step: number) => Box): SceneNode[] {
  return Array.from({ length: PRESSURE_STEPS }, (_, i) => ({
    kind: 'rect' as const,
    ...place(i + 1),
    fill: `pressure-${i + 1}` as const,
  }));
}

function frameOf(bar: Box, width: number): SceneNode {
  return {
    kind: 'path',
    d: rectangle(bar.x, bar.y, bar.width, bar.height),
    stroke: 'rule-2',
    strokeWidth: width / 2,
  };
}
