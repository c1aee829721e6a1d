/**
 * The flow along a given wall: C− lines from successive wall points, marched downstream.
 *
 * Each wall point is solved backwards (its C+ comes from a foot on the previous line), so the net is as fine as the wall
 * is divided. Old nodes whose C+ has struck the wall before the new point are passed over.
 */

import { ProblemError } from '../../numerics/problem.ts';
import type { SupersonicTable } from './gasTable.ts';
import { CharacteristicNet } from './net.ts';
import { meetAxisInto, meetInto, NODE, type Symmetry, setNodeInto, wallFromSegmentInto } from './points.ts';

/** One wall point: axial [m], radius [m], angle [rad]. */
export interface WallPoint {
  readonly axial: number;
  readonly radius: number;
  readonly angle: number;
}

/** Where characteristics of one family have run together: an internal shock, carried as a weak one. */
export interface InternalShock {
  /** Where it begins [m]. */ readonly axial: number;
  readonly radius: number;
  /** Line of the net in which it begins. */ readonly line: number;
  /** Largest jump of the flow angle across it [rad]: how weak it is. */ readonly strongestTurn: number;
}

export interface MarchedFlow {
  readonly net: CharacteristicNet;
  readonly shock: InternalShock | null;
}

/**
 * March the flow along a given wall.
 *
 * Where a new C− line overtakes the previous one, the two run on together as a weak shock: the new line's nodes then lie
 * on the old ones; θ − ν, which a weak shock of this family leaves unchanged to third order in its strength, is taken
 * from ahead, θ + ν from the new line. Its path is that of the first characteristic overtaken, its entropy rise (third
 * order as well) is left out. `shock` tells where it begins and how strong it gets, `flowAcross` what is lost in balance.
 *
 * @param start nodes from wall to axis, a C− (see throatCharacteristic)
 * @param wall points downstream of the start line's wall node, in order
 * @throws ProblemError when a point cannot be solved
 */
export function marchAlongWall(
  table: SupersonicTable,
  symmetry: Symmetry,
  start: Float64Array,
  wall: readonly WallPoint[],
): MarchedFlow {
  const startCount = start.length / NODE;
  const net = new CharacteristicNet(startCount * (wall.length + 2));
  net.nodes.set(start, net.openLine(startCount));
  net.closeLine(startCount);
  const march: March = { net, table, symmetry, shock: null, reachesAxis: true };
  for (const point of wall) marchOneLine(march, point);
  return { net, shock: march.shock };
}

interface March {
  readonly net: CharacteristicNet;
  readonly table: SupersonicTable;
  readonly symmetry: Symmetry;
  shock: InternalShock | null;
  /** False once a line has ended short of the axis: what lies beyond is not needed by the wall, nor computed. */
  reachesAxis: boolean;
}

function marchOneLine(march: March, point: WallPoint): void {
  const { net, table, symmetry } = march;
  const line = net.lineCount - 1;
  const count = net.lineLength(line);
  const old = net.offset(line, 0);
  const first = net.openLine(count + 1);
  const nodes = net.nodes;
  nodes[first] = point.axial;
  nodes[first + 1] = point.radius;
  nodes[first + 2] = point.angle;
  const foot = solveWallPoint(nodes, first, table, symmetry, old, count);
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
    if (!(error instanceof ProblemError) || march.shock === null || made < 3) throw error;
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
function liesDownstream(nodes: Float64Array, from: number, old: number): boolean {
  const angle = 0.5 * (nodes[from + 2]! - nodes[from + 4]! + nodes[old + 2]! - nodes[old + 4]!);
  const dx = nodes[old]! - nodes[from]!;
  const dr = nodes[old + 1]! - nodes[from + 1]!;
  return Math.cos(angle) * dr - Math.sin(angle) * dx >= 0;
}

/** Put the node at `at` onto the node `ahead` of the previous line; returns the jump of the flow angle [rad]. */
function overtakeInto(
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

/** Find the segment of the previous line from which the C+ of the new wall point comes. */
function solveWallPoint(
  nodes: Float64Array,
  first: number,
  table: SupersonicTable,
  symmetry: Symmetry,
  old: number,
  count: number,
): number {
  for (let j = 0; j + 1 < count; j++) {
    const share = wallFromSegmentInto(
      nodes,
      first,
      table,
      symmetry,
      nodes,
      old + j * NODE,
      old + (j + 1) * NODE,
    );
    if (share <= 1 + 1e-12) return j;
  }
  throw new ProblemError({
    code: 'wall-step-too-long',
    what: `The wall point at x = ${nodes[first]!.toPrecision(4)} m lies beyond everything that the previous line can reach.`,
    mend: 'Divide the wall more finely.',
    facts: { axial: nodes[first]! },
  });
}
