/**
 * One C− line of a net, from its first node (on a wall or at a corner) inward, by the C+ characteristics of the line before.
 */

import { ProblemError } from '../../numerics/problem.ts';
import type { SupersonicTable } from './gasTable.ts';
import type { CharacteristicNet } from './net.ts';
import { meetAxisInto, meetInto, NODE, type Symmetry, setNodeInto } from './points.ts';

/** Where characteristics of one family have run together: an internal shock, carried as a weak one. */
export interface InternalShock {
  /** Where it begins [m]. */ readonly axial: number;
  readonly radius: number;
  /** Line of the net in which it begins. */ readonly line: number;
  /** Largest jump of the flow angle across it [rad]: how weak it is. */ readonly strongestTurn: number;
}

/** A net under way. */
export interface March {
  readonly net: CharacteristicNet;
  readonly table: SupersonicTable;
  readonly symmetry: Symmetry;
  shock: InternalShock | null;
  /** False once a line has ended short of the axis: what lies beyond is not needed by the wall, nor computed. */
  reachesAxis: boolean;
  /** Whether a line may end short of the axis where it cannot be solved: what lies beyond is not wanted. */
  readonly mayEndShort?: true;
}

/**
 * Complete and close the line whose first node stands at offset `first`, the C+ of which comes from the segment behind
 * node `foot` of the line before.
 * @throws ProblemError when a point cannot be solved
 */
export function completeLine(march: March, first: number, foot: number): void {
  const { net, table, symmetry } = march;
  const line = net.lineCount - 1;
  const count = net.lineLength(line);
  const old = net.offset(line, 0);
  const nodes = net.nodes;
  let made = 1;
  try {
    for (let j = foot + 1; j < count; j++) {
      const ahead = old + j * NODE;
      const before = first + (made - 1) * NODE;
      const overtaken = liesDownstream(nodes, before, ahead);
      if (overtaken && nodes[ahead + 1]! === 0) break;
      if (overtaken) {
        noteShock(march, overtakeInto(nodes, before + NODE, table, symmetry, ahead), before + NODE, line + 1);
      } else {
        made = meetPastCrossings(march, first, made, ahead);
        if (nodes[first + made * NODE + 1]! <= 0) break;
      }
      made++;
    }
    if (march.reachesAxis) {
      meetAxisInto(nodes, first + made * NODE, table, symmetry, nodes, first + (made - 1) * NODE);
      made++;
    }
  } catch (error) {
    // Where an internal shock meets the axis the net of weak shocks ends; the wall ahead is out of its reach.
    if (!(error instanceof ProblemError) || made < 3) throw error;
    if (march.shock === null && march.mayEndShort !== true) throw error;
    march.reachesAxis = false;
  }
  net.closeLine(made);
}

/**
 * Meet the C+ of `ahead`; where it has overtaken C+ characteristics above it (a shock reflected from the axis), the nodes
 * they made on this line are dropped, so that the state behind the shock stands. Returns how many nodes come before.
 */
function meetPastCrossings(march: March, first: number, made: number, ahead: number): number {
  const { net, table, symmetry } = march;
  const { nodes } = net;
  for (;;) {
    const at = first + made * NODE;
    const before = at - NODE;
    meetInto(nodes, at, table, symmetry, nodes, before, nodes, ahead);
    const angle = nodes[before + 2]! - nodes[before + 4]!;
    const along =
      (nodes[at]! - nodes[before]!) * Math.cos(angle) +
      (nodes[at + 1]! - nodes[before + 1]!) * Math.sin(angle);
    if (along > 0 || made < 2) return made;
    made--;
  }
}

function noteShock(march: March, turn: number, at: number, line: number): void {
  const { nodes } = march.net;
  if (march.shock === null) {
    march.shock = { axial: nodes[at]!, radius: nodes[at + 1]!, line, strongestTurn: turn };
  } else if (turn > march.shock.strongestTurn) march.shock = { ...march.shock, strongestTurn: turn };
}

/** Whether the old node lies downstream of the C− that leaves `from`: then that C− has overtaken the old line. */
export function liesDownstream(nodes: Float64Array, from: number, old: number): boolean {
  const angle = 0.5 * (nodes[from + 2]! - nodes[from + 4]! + nodes[old + 2]! - nodes[old + 4]!);
  const dx = nodes[old]! - nodes[from]!;
  const dr = nodes[old + 1]! - nodes[from + 1]!;
  return Math.cos(angle) * dr - Math.sin(angle) * dx >= 0;
}

/** Put the node at `at` onto the node `ahead` of the previous line; returns the jump of the flow angle [rad]. */
export function overtakeInto(
  nodes: Float64Array,
  at: number,
  table: SupersonicTable,
  symmetry: Symmetry,
  ahead: number,
): number {
  const before = at - NODE;
  const x = nodes[ahead]!;
  const r = nodes[ahead + 1]!;
  const plus = nodes[ahead + 2]! - nodes[ahead + 3]!;
  let minus = nodes[before + 2]! + nodes[before + 3]!;
  if (symmetry === 'axisymmetric' && nodes[before + 1]! > 0) {
    const length = Math.hypot(x - nodes[before]!, r - nodes[before + 1]!);
    const atBefore = (Math.sin(nodes[before + 2]!) / nodes[before + 1]!) * Math.sin(nodes[before + 4]!);
    const atHere = r > 0 ? (Math.sin(nodes[ahead + 2]!) / r) * Math.sin(nodes[ahead + 4]!) : atBefore;
    minus += 0.5 * length * (atBefore + atHere);
  }
  const theta = 0.5 * (minus + plus);
  setNodeInto(nodes, at, table, x, r, theta, 0.5 * (minus - plus));
  return Math.abs(theta - nodes[ahead + 2]!);
}
