/** The pressure ramp as a bar with its numbers, and where the outside air stands on it. */

import { textWidth } from '../look/measureText.ts';
import { PRESSURE_STEPS, pressureStepStart } from '../look/pressureRamp.ts';
import type { Box } from '../scene/box.ts';
import { rectangle, segment } from '../scene/pathData.ts';
import type { SceneNode } from '../scene/scene.ts';
import type { PanelStyle } from './overAltitudeAxes.ts';

const LABELLED = [1e4, 1e5, 1e6, 1e7];
const LOG_LOW = Math.log(pressureStepStart(1));
const LOG_HIGH = Math.log(pressureStepStart(PRESSURE_STEPS + 1));

/** Height of the key at a type size. */
export const pressureKeyHeight = (size: number): number => 3.25 * size;

/** Drawn into a box; `ambient` [Pa] is marked where it lies on the ramp. */
export function pressureKey(box: Box, ambient: number, { type, line }: PanelStyle): SceneNode[] {
  const size = type.small;
  const bar = { x: box.x, y: box.y + 1.25 * size, width: box.width, height: 0.6 * size };
  const x = (pressure: number): number =>
    bar.x + (bar.width * (Math.log(pressure) - LOG_LOW)) / (LOG_HIGH - LOG_LOW);
  const nodes: SceneNode[] = [];
  for (let step = 1; step <= PRESSURE_STEPS; step++)
    nodes.push({
      kind: 'rect',
      x: x(pressureStepStart(step)),
      y: bar.y,
      width: bar.width / PRESSURE_STEPS + 0.5,
      height: bar.height,
      fill: `pressure-${step}`,
    });
  nodes.push({
    kind: 'path',
    d: rectangle(bar.x, bar.y, bar.width, bar.height),
    stroke: 'rule-2',
    strokeWidth: line.grid / 2,
  });
  const word = (
    text: string,
    at: number,
    y: number,
    anchor: 'start' | 'middle' | 'end',
    strong = false,
  ): SceneNode => ({
    kind: 'text',
    x: at,
    y,
    text,
    size,
    weight: strong ? 600 : 400,
    anchor,
    fill: strong ? 'ink' : 'ink-2',
  });
  for (const pressure of LABELLED) {
    nodes.push(word(String(pressure / 1e5), x(pressure), bar.y + bar.height + size, 'middle'));
    nodes.push({
      kind: 'path',
      d: segment(x(pressure), bar.y + bar.height, x(pressure), bar.y + bar.height + 0.2 * size),
      stroke: 'rule-2',
      strokeWidth: line.grid / 2,
    });
  }
  const name = 'gas and air, bar';
  nodes.push(word(name, bar.x + bar.width, box.y + 0.85 * size, 'end'));
  if (ambient >= pressureStepStart(1)) {
    const at = x(ambient);
    const half = textWidth('air here', size, 600) / 2;
    const room = bar.x + bar.width - textWidth(name, size, 400) - 0.5 * size;
    const middle = Math.max(bar.x + half, Math.min(at, room - half));
    nodes.push(word('air here', middle, box.y + 0.85 * size, 'middle', true), {
      kind: 'path',
      d: segment(at, bar.y - 0.2 * size, at, bar.y + bar.height),
      stroke: 'ink',
      strokeWidth: line.plumb,
    });
  }
  return nodes;
}
