/** The curves of a quantity over altitude: values at every half kilometre, gaps where there is none. */

import type { ConditionRow, EngineAnswer } from '../../answer/model.ts';
import type { LineSizes } from '../look/formats.ts';
import type { Box } from '../scene/box.ts';
import { type Point, polyline } from '../scene/pathData.ts';
import type { SceneNode } from '../scene/scene.ts';
import { type AltitudeAxis, LINEAR_TOP } from './altitudeAxis.ts';
import { clippedBetween } from './clipLine.ts';
import { ambientAt, conditionAt, impulseIfFull } from './conditions.ts';
import type { DrawnEngine } from './drawnEngines.ts';
import { dashOf } from './marks.ts';
import type { Altitude } from './options.ts';
import { spanOutlines } from './separationSpan.ts';

export type OverAltitudeQuantity = 'specificImpulse' | 'thrust';

export interface Curve extends DrawnEngine {
  readonly rows: readonly ConditionRow[];
  /** Pieces of the curve between gaps, pad to vacuum. */ readonly pieces: readonly (readonly Point[])[];
  /** Where there is no value or the gas has left the wall: what full flow would give, joined to its neighbours. */
  readonly ifFull: readonly (readonly Point[])[];
  /** Where the gas may have left the wall: the span of the criteria, closed. */
  readonly spans: readonly (readonly Point[])[];
}

/** Altitudes [m] at which a curve is joined; the last point is vacuum. */
const STEP = 500;
const ALTITUDES: readonly Altitude[] = [
  ...Array.from({ length: LINEAR_TOP / STEP + 1 }, (_, i) => i * STEP),
  'vacuum',
];

let ambients: readonly number[] | null = null;
/** [Pa] at {@link ALTITUDES}; the air never changes, so it is computed once. */
function ambientSteps(): readonly number[] {
  ambients ??= ALTITUDES.map(ambientAt);
  return ambients;
}

export const quantityAt = (quantity: OverAltitudeQuantity, row: ConditionRow): number | null =>
  quantity === 'thrust' ? row.thrust : row.specificImpulse;

const quantityIfFull = (quantity: OverAltitudeQuantity, engine: EngineAnswer, row: ConditionRow): number =>
  quantity === 'thrust' ? row.thrustIfFull : impulseIfFull(engine, row);

/** Whether full flow would give something else than the row's own value, or the row has none. */
export function differsFromFull(row: ConditionRow): boolean {
  if (row.thrust === null) return true;
  return row.flow.state !== 'full' && Math.abs(row.thrust - row.thrustIfFull) > 1e-6 * Math.abs(row.thrust);
}

export function sampled(rows: readonly ConditionRow[]): readonly ConditionRow[] {
  return ambientSteps().map((ambient) => conditionAt(rows, ambient));
}

/** Values that the models refuse may take this share of the span of those they give; more of them is cut off. */
const ROOM_FOR_REFUSED = 0.35;

/**
 * The span of the scale [SI]: the values the models give, and as much of what full flow would give as does not press
 * those together. Below nothing the scale does not go while any value is positive: what lies there is cut off.
 */
export function extent(
  quantity: OverAltitudeQuantity,
  rows: readonly (readonly ConditionRow[])[],
  engines: readonly DrawnEngine[],
): [number, number] {
  const given = rows.flat().flatMap((row) => quantityAt(quantity, row) ?? []);
  const refused = rows.flatMap((list, i) =>
    list.flatMap((row) =>
      differsFromFull(row) ? [quantityIfFull(quantity, (engines[i] as DrawnEngine).engine, row)] : [],
    ),
  );
  const [least, high] = spanOf(given.length > 0 ? given : refused);
  const floor = high > 0 ? 0 : Number.NEGATIVE_INFINITY;
  const room = ROOM_FOR_REFUSED * (high - Math.max(least, floor));
  const wanted = Math.min(least, Math.max(spanOf([...refused, least])[0], least - room));
  const low = Math.max(wanted, floor);
  const margin = high > low ? 0.06 * (high - low) : 0.05 * Math.abs(high) + 1e-9;
  return [low === 0 ? 0 : low - margin, high + margin];
}

function spanOf(values: readonly number[]): readonly [number, number] {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const value of values) {
    low = value < low ? value : low;
    high = value > high ? value : high;
  }
  return [low, high];
}

export interface AxisUnit {
  readonly symbol: string;
  readonly perSI: number;
}

export function unitOf(
  quantity: OverAltitudeQuantity,
  rows: readonly (readonly ConditionRow[])[],
  engines: readonly DrawnEngine[],
): AxisUnit {
  if (quantity === 'specificImpulse') return { symbol: 's', perSI: 1 };
  const high = extent(quantity, rows, engines)[1];
  return high >= 1e7
    ? { symbol: 'MN', perSI: 1e-6 }
    : high >= 1e3
      ? { symbol: 'kN', perSI: 1e-3 }
      : { symbol: 'N', perSI: 1 };
}

export function curveOf(
  drawn: DrawnEngine,
  rows: readonly ConditionRow[],
  quantity: OverAltitudeQuantity,
  axis: AltitudeAxis,
  x: (value: number) => number,
  plot: Box,
): Curve {
  const pieces: Point[][] = [];
  const ifFull: Point[][] = [];
  let piece = null as Point[] | null;
  let gapPiece = null as Point[] | null;
  let before = null as Point | null;
  rows.forEach((row, i) => {
    const y = axis.y(ALTITUDES[i] as Altitude);
    const value = quantityAt(quantity, row);
    const point = value === null ? null : { x: x(value), y };
    if (point === null) piece = null;
    else {
      if (piece === null) {
        piece = [];
        pieces.push(piece);
      }
      piece.push(point);
    }
    if (!differsFromFull(row)) {
      if (point !== null) gapPiece?.push(point);
      gapPiece = null;
      before = point;
      return;
    }
    if (gapPiece === null) {
      gapPiece = before === null ? [] : [before];
      ifFull.push(gapPiece);
    }
    gapPiece.push({ x: x(quantityIfFull(quantity, drawn.engine, row)), y });
    before = null;
  });
  const clip = (points: readonly Point[]) => clippedBetween(points, plot.x, plot.x + plot.width);
  const y = (i: number): number => axis.y(ALTITUDES[i] as Altitude);
  const spans = spanOutlines(quantity, rows, x, y, plot);
  return { ...drawn, rows, pieces: pieces.flatMap(clip), ifFull: ifFull.flatMap(clip), spans };
}

/** Faint enough for two to lie on each other. */
const SPAN_OPACITY = 0.16;

export function curveNodes(curve: Curve, line: LineSizes): SceneNode[] {
  const nodes: SceneNode[] = curve.spans.map((points) => ({
    kind: 'path',
    d: polyline(points, true),
    fill: curve.style.colour,
    fillOpacity: SPAN_OPACITY,
  }));
  for (const points of curve.ifFull)
    nodes.push({
      kind: 'path',
      d: polyline(points),
      stroke: curve.style.colour,
      strokeWidth: 0.45 * line.curve,
      dash: [1.1 * line.curve, 1.1 * line.curve],
    });
  for (const points of curve.pieces)
    nodes.push({
      kind: 'path',
      d: polyline(points),
      stroke: curve.style.colour,
      strokeWidth: line.curve,
      dash: dashOf(curve.style, line.curve),
      join: 'round',
    });
  return nodes;
}
