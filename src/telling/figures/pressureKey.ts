/** The ramp of what the gas is drawn by as a bar with its numbers, and where the outside air stands on it. */

import type { Shown } from '../../answer/flow/index.ts';
import { RAMPS, type Tint } from '../look/flowRamps.ts';
import { GRADIENT_LABELS, GRADIENT_NAME, gradientOpacity, rampOf } from '../look/gradientRamp.ts';
import { textWidth } from '../look/measureText.ts';
import { formatPressure } from '../numbers/formatNumber.ts';
import type { Box } from '../scene/box.ts';
import { rectangle, segment } from '../scene/pathData.ts';
import type { SceneNode, TextNode } from '../scene/scene.ts';
import type { PanelStyle } from './overAltitudeAxes.ts';

interface KeyWords {
  /** In one line, and in two. */ readonly name: string;
  readonly upright: readonly [string, string];
  /** In the unit of the ramp, and as written. */
  readonly labels: readonly (readonly [number, string])[];
  readonly inRatios: boolean;
}

const thousands = (values: readonly number[]): KeyWords['labels'] =>
  values.map((value) => [value, String(value)] as const);

const KEYS: Readonly<Record<Shown, KeyWords>> = {
  pressure: {
    name: 'gas and air, bar',
    upright: ['gas and', 'air, bar'],
    labels: [1e4, 1e5, 1e6, 1e7].map((pressure) => [pressure, String(pressure / 1e5)] as const),
    inRatios: true,
  },
  mach: {
    name: 'gas, Mach number',
    upright: ['gas,', 'Mach'],
    labels: thousands([1, 2, 3, 4, 5, 6]),
    inRatios: false,
  },
  temperature: {
    name: 'gas, K',
    upright: ['gas,', 'K'],
    labels: thousands([1000, 2000, 3000, 4000]),
    inRatios: false,
  },
  speed: {
    name: 'gas, m/s',
    upright: ['gas,', 'm/s'],
    labels: thousands([1000, 2000, 3000, 4000, 5000]),
    inRatios: false,
  },
  density: {
    name: 'gas and air, kg/m³',
    upright: ['gas and', 'air, kg/m³'],
    labels: thousands([0.001, 0.01, 0.1, 1, 10]),
    inRatios: true,
  },
  'density gradient': {
    name: GRADIENT_NAME,
    upright: ['change of', 'density'],
    labels: GRADIENT_LABELS,
    inRatios: true,
  },
};

/** Share of the way from the lowest to the highest value of the ramp. */
function shareOf(tint: Shown, value: number): number {
  const { steps, startOf } = rampOf(tint);
  const scaled = KEYS[tint].inRatios ? Math.log : (plain: number): number => plain;
  const [low, high] = [scaled(startOf(1)), scaled(startOf(steps + 1))];
  return (scaled(value) - low) / (high - low);
}

/** Only a picture of pressures shows the air. */
const showsAir = (tint: Shown, ambient: number): boolean =>
  tint === 'pressure' && ambient >= RAMPS.pressure.startOf(1);

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
export function pressureKey(
  box: Box,
  ambient: number,
  { type, line }: PanelStyle,
  tint: Shown = 'pressure',
): SceneNode[] {
  const { steps: count, startOf } = rampOf(tint);
  const { name, labels } = KEYS[tint];
  const size = type.small;
  const bar = { x: box.x, y: box.y + 1.3 * size, width: box.width, height: 0.65 * size };
  const x = (value: number): number => bar.x + bar.width * shareOf(tint, value);
  const nodes: SceneNode[] = [
    ...steps(tint, (step) => ({
      x: x(startOf(step)),
      y: bar.y,
      width: bar.width / count + 0.5,
      height: bar.height,
    })),
    frameOf(bar, line.grid),
    word(name, bar.x + bar.width, box.y + 0.85 * size, 'end', size),
    ...labels.map(([value, text]) => word(text, x(value), bar.y + bar.height + size, 'middle', size)),
  ];
  if (!showsAir(tint, ambient)) return nodes;
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
export const pressureKeyUprightWidth = (size: number, tint: Tint = 'pressure'): number =>
  sayWidth(size) +
  barWidth(size) +
  0.4 * size +
  Math.max(...KEYS[tint].labels.map(([, text]) => textWidth(text, size, 400)));

/** From the lowest pressure at the bottom to the highest at the top. */
export function pressureKeyUpright(
  box: Box,
  ambient: number,
  { type, line }: PanelStyle,
  tint: Tint = 'pressure',
): SceneNode[] {
  const { steps: count, startOf } = RAMPS[tint];
  const { upright, labels } = KEYS[tint];
  const size = type.small;
  const head = 2.5 * size;
  const bar = {
    x: box.x + sayWidth(size),
    y: box.y + head,
    width: barWidth(size),
    height: box.height - head,
  };
  const y = (value: number): number => bar.y + bar.height * (1 - shareOf(tint, value));
  const middle = bar.x + bar.width / 2;
  const nodes: SceneNode[] = [
    ...steps(tint, (step) => ({
      x: bar.x,
      y: y(startOf(step + 1)),
      width: bar.width,
      height: bar.height / count + 0.5,
    })),
    frameOf(bar, line.grid),
    word(upright[0], middle, box.y + 0.8 * size, 'middle', size),
    word(upright[1], middle, box.y + 1.95 * size, 'middle', size),
    ...labels.map(([value, text]) =>
      word(text, bar.x + bar.width + 0.4 * size, y(value) + 0.33 * size, 'start', size),
    ),
  ];
  if (!showsAir(tint, ambient)) return nodes;
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

function steps(tint: Shown, place: (step: number) => Box): SceneNode[] {
  return Array.from({ length: rampOf(tint).steps }, (_, i) => ({
    kind: 'rect' as const,
    ...place(i + 1),
    ...(tint === 'density gradient'
      ? { fill: 'ink' as const, fillOpacity: gradientOpacity(i + 1) }
      : { fill: `${tint}-${i + 1}` as const }),
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
