/**
 * The flow along a wall, line across the flow after line, up to the plane of the lip.
 *
 * The first line is cut through the net of an expansion, from its last wall point down to the axis; the following ones
 * tilt from it to a plane, so that the last one is the exit plane.
 */

import { calm } from './calm.ts';
import type { SupersonicTable } from './gasTable.ts';
import { keepMass } from './keepMass.ts';
import { axisNodeInto, type Foot, innerNodeInto, newFoot, OldLine, wallNodeInto } from './lineToLine.ts';
import { CharacteristicNet } from './net.ts';
import { NODE, type Symmetry } from './points.ts';
import { type ShockTrace, traceShock } from './shockTrace.ts';
import type { WallPoint } from './wallMarch.ts';

/** How far a line may move on along the axis for each length moved along the wall, at least [–]. */
const LEAST_ADVANCE = 0.15;

export interface CrossedFlow {
  /** Lines from wall to axis. */ readonly net: CharacteristicNet;
  /** What the lines together missed of the mass flow before it was put right, over the mass flow [–]. */
  readonly drift: number;
  /** Where characteristics of one family run together; null: nowhere. */ readonly shock: ShockTrace | null;
}

/**
 * March along `wall` from the line `start` (nodes from wall to axis), which lies steeper than its C−.
 * @param massFlow [kg/s] that every line carries (planar: per metre, half above the plane of symmetry)
 * @returns lines with as many nodes as `start`, which is the first of them
 * @throws ProblemError where the flow leaves the gas table or turns too sharply for the net
 */
export function marchAcross(
  table: SupersonicTable,
  symmetry: Symmetry,
  start: Float64Array,
  wall: readonly WallPoint[],
  massFlow: number,
): CrossedFlow {
  const across = start.length / NODE;
  const net = new CharacteristicNet((wall.length + 1) * across);
  net.nodes.set(start, net.openLine(across));
  net.closeLine(across);
  const march: CrossMarch = {
    net,
    table,
    symmetry,
    old: new OldLine(across),
    down: newFoot(),
    up: newFoot(),
    ...leanOf(start, wall),
  };
  let drift = 0;
  let shock: ShockTrace | null = null;
  for (const point of wall) {
    const first = marchOneLine(march, point);
    calm(net.nodes, first, across, table);
    drift += keepMass(net.nodes, first, across, table, symmetry, massFlow);
    shock = traceShock(shock, net.nodes, first, across, point.axial - net.nodes[first - across * NODE]!);
  }
  return { net, drift, shock };
}

interface CrossMarch {
  readonly net: CharacteristicNet;
  readonly table: SupersonicTable;
  readonly symmetry: Symmetry;
  readonly old: OldLine;
  readonly down: Foot;
  readonly up: Foot;
  /** r of each node over the wall's, 1 at the wall [–] */ readonly heights: Float64Array;
  /** Share of the lean at each node, 0 at the wall, 1 on the axis [–] */ readonly shares: Float64Array;
  /** How far the axis node of a line stands behind its wall node [m]. */ lean(axial: number): number;
}

/** The lean of `start` is lost evenly on the way to the last wall point, as far as the lines may turn. */
function leanOf(
  start: Float64Array,
  wall: readonly WallPoint[],
): Pick<CrossMarch, 'heights' | 'shares' | 'lean'> {
  const count = start.length / NODE;
  const x0 = start[0]!;
  const tilt = start[(count - 1) * NODE]! - x0;
  const length = (wall.at(-1)?.axial ?? x0) - x0;
  const lost = Math.min(1, ((1 - LEAST_ADVANCE) * length) / tilt);
  return {
    heights: Float64Array.from({ length: count }, (_, j) => start[j * NODE + 1]! / start[1]!),
    shares: Float64Array.from({ length: count }, (_, j) => (start[j * NODE]! - x0) / tilt),
    lean: (axial) => tilt * (1 - (lost * (axial - x0)) / length),
  };
}

/** Returns the offset of the new line's first node. */
function marchOneLine(march: CrossMarch, point: WallPoint): number {
  const { net, table, symmetry, old, down, up, heights, shares } = march;
  const count = heights.length;
  const from = net.offset(net.lineCount - 1, 0);
  const first = net.openLine(count);
  const { nodes } = net;
  old.take(nodes, from);
  const lean = march.lean(point.axial);
  for (let j = 0; j < count; j++) {
    const at = first + j * NODE;
    nodes[at] = point.axial + lean * shares[j]!;
    nodes[at + 1] = point.radius * heights[j]!;
    // First guess of the state: that of the node before it.
    for (let k = 2; k < NODE; k++) nodes[at + k] = nodes[from + j * NODE + k]!;
  }
  nodes[first + 2] = point.angle;
  up.segment = 1;
  wallNodeInto(nodes, first, table, symmetry, old, up);
  old.setWall(nodes, first);
  const last = first + (count - 1) * NODE;
  down.segment = count - 1;
  axisNodeInto(nodes, last, table, symmetry, old, down);
  old.setAxis(nodes, last);
  down.segment = 0;
  up.segment = 1;
  for (let at = first + NODE; at < last; at += NODE) innerNodeInto(nodes, at, table, symmetry, old, down, up);
  net.closeLine(count);
  return first;
}
