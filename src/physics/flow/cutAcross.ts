/** A line straight across the net of an expansion, from its last wall point down to the axis: all that is needed to go on. */

import type { SupersonicTable } from './gasTable.ts';
import type { CharacteristicNet } from './net.ts';
import { NODE, setNodeInto } from './points.ts';

/** Exponent of the spacing along the cut [–]: denser towards the wall, where the expansion has not yet spread. */
const TOWARDS_WALL = 1.4;

/**
 * A line cut through the net of C− lines, straight from the last wall point to the axis node of line `to`.
 *
 * @param to line of the net on whose axis node the cut ends; at least three lines before the last
 * @param across nodes of the cut
 * @returns nodes from wall to axis
 */
export function cutAcross(
  net: CharacteristicNet,
  table: SupersonicTable,
  to: number,
  across: number,
): Float64Array {
  const last = net.lineCount - 1;
  const crossings = new Float64Array((last - to + 1) * NODE);
  const wall = net.offset(last, 0);
  const axis = net.offset(to, net.lineLength(to) - 1);
  const { nodes } = net;
  const dx = nodes[axis]! - nodes[wall]!;
  const dr = nodes[axis + 1]! - nodes[wall + 1]!;
  crossings.set(nodes.subarray(wall, wall + NODE));
  for (let line = last - 1; line > to; line--) {
    const first = net.offset(line, 0);
    const side = (i: number): number =>
      dx * (nodes[first + i * NODE + 1]! - nodes[wall + 1]!) - dr * (nodes[first + i * NODE]! - nodes[wall]!);
    let i = 0;
    while (i < net.lineLength(line) - 2 && side(i + 1) < 0) i++;
    const share = side(i) / (side(i) - side(i + 1));
    alongLineInto(crossings, (last - line) * NODE, nodes, first, net.lineLength(line), i + share);
  }
  crossings.set(nodes.subarray(axis, axis + NODE), (last - to) * NODE);
  const out = new Float64Array(across * NODE);
  for (let j = 0; j < across; j++) {
    const share = j / (across - 1);
    atRadiusInto(out, j * NODE, table, crossings, nodes[wall + 1]! * (1 - share ** TOWARDS_WALL));
  }
  return out;
}

/** x, r, θ, ν at a fractional index of a line, by the cubic through four nodes. */
function alongLineInto(
  out: Float64Array,
  at: number,
  nodes: Float64Array,
  first: number,
  count: number,
  index: number,
): void {
  const from = Math.min(Math.max(Math.floor(index) - 1, 0), count - 4);
  const t = index - from;
  const w = [
    -((t - 1) * (t - 2) * (t - 3)) / 6,
    (t * (t - 2) * (t - 3)) / 2,
    -(t * (t - 1) * (t - 3)) / 2,
    (t * (t - 1) * (t - 2)) / 6,
  ];
  for (let k = 0; k < 4; k++) {
    out[at + k] = w.reduce((sum, weight, m) => sum + weight * nodes[first + (from + m) * NODE + k]!, 0);
  }
}

/** The node at radius r of a line of any spacing, by the cubic through four of its nodes. */
function atRadiusInto(
  out: Float64Array,
  at: number,
  table: SupersonicTable,
  line: Float64Array,
  r: number,
): void {
  const count = line.length / NODE;
  const radius = (i: number): number => line[i * NODE + 1]!;
  let i = 0;
  while (i < count - 2 && radius(i + 1) > r) i++;
  const from = Math.min(Math.max(i - 1, 0), count - 4);
  const sums = [0, 0, 0, 0];
  for (let m = from; m < from + 4; m++) {
    let weight = 1;
    for (let n = from; n < from + 4; n++) if (n !== m) weight *= (r - radius(n)) / (radius(m) - radius(n));
    for (let k = 0; k < 4; k++) sums[k]! += weight * line[m * NODE + k]!;
  }
  setNodeInto(out, at, table, sums[0]!, r, r === 0 ? 0 : sums[2]!, sums[3]!);
}
