/** A field on lines across a flow, as flat bands of a ramp and the lines between them. */

import type { Ramp } from '../look/flowRamps.ts';
import type { Point } from '../scene/pathData.ts';

export interface FieldNode extends Point {
  /** In the unit of the ramp, above 0. */ readonly value: number;
}

export interface FieldBands {
  /** Polygons of each step of the ramp, step 0 (paper) left out. */
  readonly bands: ReadonlyMap<number, readonly (readonly Point[])[]>;
  /** Pieces of lines of equal value. */
  readonly isobars: readonly {
    readonly from: Point;
    readonly to: Point;
    readonly value: number;
    readonly powerOfTen: boolean;
  }[];
}

/** Between lines of equal numbers of nodes, each cell as two triangles on which the logarithm of the value is linear. */
export function fieldBands(lines: readonly (readonly FieldNode[])[], ramp: Ramp): FieldBands {
  const bands = new Map<number, (readonly Point[])[]>();
  const isobars: FieldBands['isobars'][number][] = [];
  const add = (step: number, polygon: readonly Point[]): void => {
    if (step === 0 || polygon.length < 3) return;
    const there = bands.get(step);
    if (there === undefined) bands.set(step, [polygon]);
    else there.push(polygon);
  };
  for (let k = 1; k < lines.length; k++) {
    const [a, b] = [lines[k - 1]!, lines[k]!];
    for (let i = 1; i < Math.min(a.length, b.length); i++) {
      const cell = [a[i - 1]!, a[i]!, b[i]!, b[i - 1]!];
      const steps = cell.map(({ value }) => ramp.stepOf(value));
      if (new Set(steps).size === 1) {
        add(steps[0]!, cell);
        continue;
      }
      for (const triangle of [
        [cell[0]!, cell[1]!, cell[2]!],
        [cell[0]!, cell[2]!, cell[3]!],
      ]) {
        cut(triangle, ramp, add, (edge) => isobars.push(edge));
      }
    }
  }
  return { bands, isobars };
}

function cut(
  triangle: readonly FieldNode[],
  ramp: Ramp,
  add: (step: number, polygon: readonly Point[]) => void,
  addIsobar: (edge: FieldBands['isobars'][number]) => void,
): void {
  const steps = triangle.map(({ value }) => ramp.stepOf(value));
  const [low, high] = [Math.min(...steps), Math.max(...steps)];
  for (let step = low; step <= high; step++) {
    let piece: readonly FieldNode[] = triangle;
    if (step > low) piece = clipped(piece, ramp.startOf(step), 1);
    if (step < high) piece = clipped(piece, ramp.startOf(step + 1), -1);
    add(step, piece);
    if (step === low) continue;
    const value = ramp.startOf(step);
    const [from, to] = piece.filter((node) => Math.abs(Math.log(node.value / value)) < 1e-9);
    if (from !== undefined && to !== undefined) {
      addIsobar({ from, to, value, powerOfTen: ramp.isStrong(step) });
    }
  }
}

/** The part of a polygon on one side of a value: 1 above, −1 below. */
function clipped(polygon: readonly FieldNode[], value: number, side: 1 | -1): readonly FieldNode[] {
  const kept: FieldNode[] = [];
  polygon.forEach((node, i) => {
    const next = polygon[(i + 1) % polygon.length]!;
    const here = side * Math.log(node.value / value);
    const there = side * Math.log(next.value / value);
    if (here >= 0) kept.push(node);
    if (here * there < 0) {
      const t = here / (here - there);
      kept.push({ x: node.x + t * (next.x - node.x), y: node.y + t * (next.y - node.y), value });
    }
  });
  return kept;
}
