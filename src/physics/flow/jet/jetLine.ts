/** One C− line of a jet, from its first node inward, by the C+ of the line before; and where lines run together. */

import { ProblemError } from '../../../numerics/problem.ts';
import { columnAt } from '../gasTable.ts';
import { liesDownstream, overtakeInto } from '../lineMarch.ts';
import { meetAxisInto, meetInto, NODE } from '../points.ts';
import type { Crossing, Jet } from './model.ts';

/** A node nearer the axis than this share of the one above it would not settle: sin θ/r there is a quotient of two errors. */
const NEAR_AXIS = 0.3;

/** Complete and close the line whose first node stands at `first`, whose C+ came from node `foot` of the line before. */
export function completeJetLine(jet: Jet, first: number, foot: number): void {
  const { net } = jet;
  const line = net.lineCount - 1;
  const count = net.lineLength(line);
  const old = net.offset(line, 0);
  const { nodes } = net;
  let made = 1;
  for (let j = foot + 1; j < count; j++) {
    const ahead = old + j * NODE;
    const at = first + made * NODE;
    if (made > 1 && tooNearAxis(nodes, at - NODE, ahead)) {
      // The axis point of the line before stands in, and sends its C+ to a later line.
      nodes.copyWithin(at, ahead, ahead + NODE);
      net.closeLine(made + 1);
      return;
    }
    if (!meetForward(jet, at, ahead)) {
      jet.reachesAxis = false;
      net.closeLine(made);
      return;
    }
    made++;
  }
  net.closeLine(made + endOnAxis(jet, first + made * NODE));
}

/** Add the axis node at `at`; returns how many nodes were added. */
function endOnAxis(jet: Jet, at: number): 0 | 1 {
  const { net, table, symmetry } = jet;
  const { nodes } = net;
  const before = at - NODE;
  if (!jet.reachesAxis || nodes[before + 1]! === 0) return 0;
  const down = nodes[before + 4]! - nodes[before + 2]!;
  const reach = nodes[before + 1]! / Math.tan(down);
  if (down > 0 && down < Math.PI / 2 && nodes[before]! + reach < jet.axialLimit) {
    const solved = tryTo(() => {
      meetAxisInto(nodes, at, table, symmetry, nodes, before);
      return 1;
    });
    if (solved === 1) return 1;
    noteCrossing(jet, nodes[before]!, 0, 'C−');
  }
  jet.reachesAxis = false;
  return 0;
}

/** Whether the C+ from the axis point `axis` would meet the C− from `before` hard by the axis. */
function tooNearAxis(nodes: Float64Array, before: number, axis: number): boolean {
  const above = nodes[before + 1]!;
  if (nodes[axis + 1]! !== 0 || !(above > 0)) return false;
  const up = Math.tan(nodes[axis + 4]!);
  const down = Math.tan(nodes[before + 4]! - nodes[before + 2]!);
  if (!(down > 0)) return false;
  // above − down (x − x_b) = up (x − x_a)
  const x = (above + down * nodes[before]! + up * nodes[axis]!) / (up + down);
  return up * (x - nodes[axis]!) < NEAR_AXIS * above;
}

/** Solve the node at `at` from the one before it on its line and `ahead`; false where the line has to end before it. */
function meetForward(jet: Jet, at: number, ahead: number): boolean {
  const { net, table, symmetry } = jet;
  const { nodes } = net;
  const before = at - NODE;
  if (liesDownstream(nodes, before, ahead)) return overtake(jet, at, ahead);
  const alongPlus = tryTo(() => meetInto(nodes, at, table, symmetry, nodes, before, nodes, ahead));
  const angle = nodes[before + 2]! - nodes[before + 4]!;
  const alongMinus =
    (nodes[at]! - nodes[before]!) * Math.cos(angle) + (nodes[at + 1]! - nodes[before + 1]!) * Math.sin(angle);
  if (!(alongPlus > 0 && alongMinus > 0)) {
    noteCrossing(jet, nodes[ahead]!, nodes[ahead + 1]!, alongPlus > 0 ? 'C−' : 'C+');
    return false;
  }
  return nodes[at]! <= jet.axialLimit && nodes[at + 1]! > 0;
}

/**
 * This line has caught up with the one before: both run on as one weak shock (see `overtakeInto`), as long as the pressure
 * across it rises by no more than the jet allows; false where it is stronger.
 */
export function overtake(jet: Jet, at: number, ahead: number): boolean {
  const { net, table, symmetry } = jet;
  const { nodes } = net;
  noteCrossing(jet, nodes[ahead]!, nodes[ahead + 1]!, 'C−');
  if (nodes[ahead + 1]! === 0 || jet.weakRise <= 1) return false;
  const solved = tryTo(() => overtakeInto(nodes, at, table, symmetry, ahead));
  if (solved < 0) return false;
  const { knots, step, cells } = table;
  const rise =
    columnAt(knots.lnPressure, step, cells, nodes[at + 3]!) -
    columnAt(knots.lnPressure, step, cells, nodes[ahead + 3]!);
  return rise <= Math.log(jet.weakRise);
}

/** Characteristics that have all but run together have no point of meeting that settles: as good as crossed. */
function tryTo(solve: () => number): number {
  try {
    return solve();
  } catch (error) {
    if (error instanceof ProblemError && UNSETTLED.includes(error.problem.code))
      return Number.NEGATIVE_INFINITY;
    throw error;
  }
}

const UNSETTLED = ['characteristics-not-converged', 'characteristics-do-not-meet', 'flow-outside-table'];

function noteCrossing(jet: Jet, axial: number, radius: number, family: Crossing['family']): void {
  jet.crossing ??= { axial, radius, family };
}
