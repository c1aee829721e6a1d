/** What a quantity over altitude is read against: grid, the strip of air pressure, and three axes. */

import { geometricAltitudeAtPressure } from '../../physics/air/index.ts';
import type { LineSizes, TypeSizes } from '../look/formats.ts';
import { pressureStep, pressureStepStart } from '../look/pressureRamp.ts';
import { formatNumber } from '../numbers/formatNumber.ts';
import type { Box } from '../scene/box.ts';
import { polyline, rectangle, segment } from '../scene/pathData.ts';
import type { SceneNode } from '../scene/scene.ts';
import type { AltitudeAxis } from './altitudeAxis.ts';
import { ambientAt } from './conditions.ts';
import type { AxisUnit, OverAltitudeQuantity } from './overAltitudeCurves.ts';

export interface PanelStyle {
  readonly type: TypeSizes;
  readonly line: LineSizes;
}

/** [Pa] ticks of the axis of air pressure */
const PRESSURE_TICKS = [1e5, 3e4, 1e4, 3e3, 1e3];

export function tickCount(width: number, size: number): number {
  return Math.max(2, Math.min(6, Math.floor(width / (3.6 * size))));
}

export function gridOf(plot: Box, axis: AltitudeAxis, xs: readonly number[], line: LineSizes): SceneNode[] {
  const right = plot.x + plot.width;
  const bottom = plot.y + plot.height;
  const ys = [0, 10_000, 20_000, 30_000, 40_000, 'vacuum' as const].map((altitude) => axis.y(altitude));
  const d =
    ys.map((y) => segment(plot.x, y, right, y)).join('') +
    xs.map((x) => segment(x, plot.y, x, bottom)).join('');
  return [
    { kind: 'path', d, stroke: 'rule', strokeWidth: line.grid },
    { kind: 'path', d: segment(right, plot.y, right, bottom), stroke: 'rule-2', strokeWidth: line.grid },
  ];
}

/** The strip in the colours of the air's pressure, flat bands, broken above 40 km. */
export function airStrip(strip: Box, axis: AltitudeAxis, line: LineSizes): SceneNode[] {
  const bands: SceneNode[] = [];
  const highest = pressureStep(ambientAt(0));
  for (let step = highest; step >= 1; step--) {
    const from = step === highest ? 0 : geometricAltitudeAtPressure(pressureStepStart(step + 1));
    const to = geometricAltitudeAtPressure(pressureStepStart(step));
    const top = axis.y(to);
    bands.push({
      kind: 'rect',
      x: strip.x,
      y: top,
      width: strip.width,
      height: axis.y(from) - top,
      fill: `pressure-${step}`,
    });
  }
  const middle = axis.breakAt - 0.45 * (axis.breakAt - axis.top);
  const lean = 0.25 * strip.width;
  const apart = 0.16 * (axis.breakAt - axis.top);
  const stroke = (y: number): string =>
    segment(strip.x - lean, y + lean, strip.x + strip.width + lean, y - lean);
  return [
    ...bands,
    {
      kind: 'path',
      d: rectangle(strip.x, strip.y, strip.width, strip.height),
      stroke: 'rule-2',
      strokeWidth: line.grid,
    },
    {
      kind: 'path',
      d: polyline(
        [
          { x: strip.x - lean, y: middle - apart + lean },
          { x: strip.x + strip.width + lean, y: middle - apart - lean },
          { x: strip.x + strip.width + lean, y: middle + apart - lean },
          { x: strip.x - lean, y: middle + apart + lean },
        ],
        true,
      ),
      fill: 'paper',
    },
    {
      kind: 'path',
      d: stroke(middle - apart) + stroke(middle + apart),
      stroke: 'rule-2',
      strokeWidth: line.leader,
    },
  ];
}

export function altitudeWords(strip: Box, axis: AltitudeAxis, { type }: PanelStyle): SceneNode[] {
  const x = strip.x - 0.3 * type.label;
  const middle = 0.33 * type.label;
  const word = (text: string, y: number): SceneNode => ({
    kind: 'text',
    x,
    y,
    text,
    size: type.label,
    weight: 400,
    anchor: 'end',
    fill: 'ink',
  });
  return [
    word('0\u00a0km', axis.y(0) + middle),
    ...[10, 20, 30, 40].map((km) => word(String(km), axis.y(1000 * km) + middle)),
    // A little higher than its line, so that it keeps clear of 40 km.
    word('vacuum', axis.y('vacuum') + 0.2 * type.label),
  ];
}

export function pressureAxis(plot: Box, axis: AltitudeAxis, { type, line }: PanelStyle): SceneNode[] {
  const right = plot.x + plot.width;
  const tick = 0.35 * type.small;
  const word = (text: string, y: number): SceneNode => ({
    kind: 'text',
    x: right + tick + 0.25 * type.small,
    y: y + 0.33 * type.small,
    text,
    size: type.small,
    weight: 400,
    anchor: 'start',
    fill: 'ink-2',
  });
  const nodes: SceneNode[] = [word('no air', axis.y('vacuum'))];
  for (const pressure of PRESSURE_TICKS) {
    const y = axis.y(geometricAltitudeAtPressure(pressure));
    const text = pressure === 1e5 ? '1\u00a0bar' : formatNumber(pressure / 1e5, 1);
    nodes.push(word(text, y), {
      kind: 'path',
      d: segment(right, y, right + tick, y),
      stroke: 'rule-2',
      strokeWidth: line.grid,
    });
  }
  return nodes;
}

export function quantityAxis(
  plot: Box,
  ticks: readonly number[],
  x: (value: number) => number,
  quantity: OverAltitudeQuantity,
  unit: AxisUnit,
  { type }: PanelStyle,
): SceneNode[] {
  const y = plot.y + plot.height + 1.15 * type.label;
  const digits = Math.max(0, ...ticks.map((tick) => decimalsOf(tick * unit.perSI)));
  const nodes: SceneNode[] = ticks.map((tick) => ({
    kind: 'text',
    x: x(tick),
    y,
    text: (tick * unit.perSI).toFixed(digits).replace('-', '−'),
    size: type.label,
    weight: 400,
    anchor: 'middle',
    fill: 'ink',
  }));
  nodes.push({
    kind: 'text',
    x: plot.x + plot.width / 2,
    y: y + 1.15 * type.label,
    text: `${quantity === 'thrust' ? 'thrust' : 'specific impulse'}, ${unit.symbol}`,
    size: type.label,
    weight: 400,
    anchor: 'middle',
    fill: 'ink-2',
  });
  return nodes;
}

function decimalsOf(value: number): number {
  const text = String(Number(value.toPrecision(6)));
  return text.includes('.') ? (text.split('.')[1] ?? '').length : 0;
}
