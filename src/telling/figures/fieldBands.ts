/** A field on lines across a flow, as flat bands of a ramp and the lines between them. */

import type { Ramp } from '../look/flowRamps.ts';
import type { Point } from '../scene/pathData.ts';

export interface FieldNode extends Point {
  /** In the unit of the ramp, above 0. */ readonly value: number;
}

/** Polygons: corner after corner, x and y in turn, and where in that row each polygon ends. */
export interface Pieces {
  readonly xy: readonly number[];
  readonly ends: readonly number[];
}

export interface FieldBands {
  /** Polygons of each step of the ramp, step 0 (paper) left out. */ readonly bands: ReadonlyMap<
    number,
    Pieces
  >;
  /** By the step that begins there: pieces of the line of equal value, x and y of both ends in turn. */
  readonly isobars: ReadonlyMap<number, readonly number[]>;
}

interface Growing {
  readonly bands: Map<number, { readonly xy: number[]; readonly ends: number[] }>;
  readonly isobars: Map<number, number[]>;
}

/** A corner while a cell is cut: its place, and the logarithm of its value. */
type Corner = readonly [x: number, y: number, log: number];

type Bands = Omit<Ramp, 'tint'>;

/** Between lines of equal numbers of nodes, each cell as two triangles on which the logarithm of the value is linear. */
export function fieldBands(lines: readonly (readonly FieldNode[])[], ramp: Bands): FieldBands {
  const found: Growing = { bands: new Map(), isobars: new Map() };
  const corners = lines.map((line) => line.map(({ x, y, value }): Corner => [x, y, Math.log(value)]));
  const steps = lines.map((line) => line.map(({ value }) => ramp.stepOf(value)));
  for (let k = 1; k < lines.length; k++) {
    between(
      { corners: corners[k - 1]!, steps: steps[k - 1]! },
      { corners: corners[k]!, steps: steps[k]! },
      ramp,
      found,
    );
  }
  return found;
}

interface Line {
  readonly corners: readonly Corner[];
  readonly steps: readonly number[];
}

/** The strip between two lines; cells of one step beside each other become one polygon. */
function between(a: Line, b: Line, ramp: Bands, found: Growing): void {
  const last = Math.min(a.corners.length, b.corners.length) - 1;
  let from = 0;
  while (from < last) {
    const step = a.steps[from]!;
    let to = from;
    while (
      to < last &&
      a.steps[to] === step &&
      b.steps[to] === step &&
      a.steps[to + 1] === step &&
      b.steps[to + 1] === step
    )
      to++;
    if (to > from) {
      add(found, step, [...a.corners.slice(from, to + 1), ...b.corners.slice(from, to + 1).reverse()]);
      from = to;
      continue;
    }
    const [p, q, r, s] = [a.corners[from]!, a.corners[from + 1]!, b.corners[from + 1]!, b.corners[from]!];
    const [i, j, l, m] = [a.steps[from]!, a.steps[from + 1]!, b.steps[from + 1]!, b.steps[from]!];
    cut([p, q, r], [i, j, l], ramp, found);
    cut([p, r, s], [i, l, m], ramp, found);
    from++;
  }
}

function add({ bands }: Growing, step: number, polygon: readonly Corner[]): void {
  if (step === 0 || polygon.length < 3) return;
  const there = bands.get(step) ?? { xy: [], ends: [] };
  bands.set(step, there);
  for (const [x, y] of polygon) there.xy.push(x, y);
  there.ends.push(there.xy.length);
}

function cut(
  triangle: readonly Corner[],
  [i, j, k]: readonly [number, number, number],
  ramp: Bands,
  found: Growing,
): void {
  const low = Math.min(i, j, k);
  const high = Math.max(i, j, k);
  for (let step = low; step <= high; step++) {
    const start = step > low ? Math.log(ramp.startOf(step)) : Number.NEGATIVE_INFINITY;
    let piece = triangle;
    if (step > low) piece = clipped(piece, start, 1);
    if (step < high) piece = clipped(piece, Math.log(ramp.startOf(step + 1)), -1);
    add(found, step, piece);
    if (step === low) continue;
    const [from, to] = piece.filter(([, , log]) => Math.abs(log - start) < 1e-9);
    if (from === undefined || to === undefined) continue;
    const isobar = found.isobars.get(step) ?? [];
    found.isobars.set(step, isobar);
    isobar.push(from[0], from[1], to[0], to[1]);
  }
}

/** The part of a polygon on one side of a value: 1 above, −1 below. */
function clipped(polygon: readonly Corner[], log: number, side: 1 | -1): readonly Corner[] {
  const kept: Corner[] = [];
  polygon.forEach((corner, i) => {
    const next = polygon[(i + 1) % polygon.length]!;
    const here = side * (corner[2] - log);
    const there = side * (next[2] - log);
    if (here >= 0) kept.push(corner);
    if (here * there < 0) {
      const t = here / (here - there);
      kept.push([corner[0] + t * (next[0] - corner[0]), corner[1] + t * (next[1] - corner[1]), log]);
    }
  });
  return kept;
}
