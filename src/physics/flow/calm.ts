import { columnAt, type SupersonicTable } from './gasTable.ts';
import { NODE } from './points.ts';

/** Jump of second differences [rad] at which the smoothing is full. */
const FULL = 0.05;
/** Largest share of the second difference taken off [–]. */
const MOST = 0.25;

/**
 * Smooth a line where it is jagged: a shock smeared over few nodes, or one that closes on the axis.
 *
 *   f_j += w (f_{j−1} − 2 f_j + f_{j+1}),   w = 0.25 min(1, |Δ²ν|/0.05)
 *
 * In smooth flow Δ² is of second order and w with it, so that what is taken off is of fourth order. The wall node stays;
 * across the axis θ is odd and ν even.
 */
export function calm(nodes: Float64Array, first: number, count: number, table: SupersonicTable): void {
  const last = first + (count - 1) * NODE;
  let thetaBefore = nodes[first + 2]!;
  let nuBefore = nodes[first + 3]!;
  for (let at = first + NODE; at <= last; at += NODE) {
    const onAxis = at === last;
    const theta = nodes[at + 2]!;
    const nu = nodes[at + 3]!;
    const nuNext = onAxis ? nuBefore : nodes[at + NODE + 3]!;
    const bend = nuBefore - 2 * nu + nuNext;
    const weight = MOST * Math.min(1, Math.abs(bend) / FULL);
    if (!onAxis) nodes[at + 2] = theta + weight * (thetaBefore - 2 * theta + nodes[at + NODE + 2]!);
    nodes[at + 3] = nu + weight * bend;
    nodes[at + 4] = columnAt(table.knots.mu, table.step, table.cells, nodes[at + 3]!);
    thetaBefore = theta;
    nuBefore = nu;
  }
}
