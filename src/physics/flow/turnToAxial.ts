/**
 * The wall that turns a flow to run parallel to the axis, with no wave left: the second half of an ideal nozzle.
 *
 * Known are the last C− line of the expansion, from the wall to the axis, and the C+ that leaves its axis point, behind
 * which the flow is uniform. Between the two the flow is determined (a Goursat problem): C− lines are found upstream from
 * points of that last C+. The wall is the streamline from the line's first node.
 *
 * Source: the construction is that of every text on ideal nozzles, e.g. J. D. Anderson, Modern Compressible Flow, ch. 11
 * (from memory). Second order; the net itself never uses interpolated states.
 */

import { ProblemError } from '../../numerics/problem.ts';
import { flowAcross } from './axialFlow.ts';
import { columnAt, type SupersonicTable } from './gasTable.ts';
import { meetInto, NODE, type Symmetry, setNodeInto } from './points.ts';

/** A wall point with the flow's state there. */
export interface ShapedWallPoint {
  readonly axial: number;
  readonly radius: number;
  /** [rad] */ readonly angle: number;
  /** Prandtl–Meyer angle [rad] */ readonly nu: number;
}

/**
 * Shape the wall.
 * @param line nodes of the last C− of the expansion, wall first, axis last, stride NODE
 * @param steps C− lines between it and the lip
 * @returns points from the line's first node to the lip, where the flow is uniform and axial
 * @throws ProblemError when the line does not end on the axis or characteristics run together (no such wall exists)
 */
export function turnToAxial(
  table: SupersonicTable,
  symmetry: Symmetry,
  line: Float64Array,
  steps: number,
): readonly ShapedWallPoint[] {
  const count = line.length / NODE;
  const last = (count - 1) * NODE;
  if (line[last + 1] !== 0 || count < 2) {
    throw new ProblemError({
      code: 'line-short-of-axis',
      what: 'The last line of the expansion does not reach the axis, so the flow behind it is not determined.',
      mend: 'Expand without an internal shock: turn the wall less sharply.',
    });
  }
  const x0 = line[last]!;
  const nu = line[last + 3]!;
  const mu = line[last + 4]!;
  const lipRadius = radiusOfUniformFlow(
    table,
    symmetry,
    nu,
    flowAcross(line, 0, count, table, symmetry).massFlow,
  );
  let old = upwards(line);
  const wall = [pointOf(line, 0)];
  for (let step = 1; step <= 2 * steps; step++) {
    const r = (lipRadius * step) / steps;
    const next = new Float64Array(old.length);
    setNodeInto(next, 0, table, x0 + r / Math.tan(mu), r, 0, nu);
    for (let at = NODE; at < old.length; at += NODE) meetUpstream(next, at, table, symmetry, old);
    const from = wall[wall.length - 1]!;
    const here = followStreamline(from, next);
    if (here === null) {
      wall.push(lipPoint(from, x0, mu, nu));
      return wall;
    }
    wall.push(here);
    old = next;
  }
  throw new ProblemError({
    code: 'shaped-wall-not-closed',
    what: `The wall does not meet the last characteristic by twice the radius expected, ${lipRadius.toPrecision(4)} m.`,
    mend: 'Use a finer net.',
    facts: { lipRadius },
  });
}

/** The node at `at` of the new line: its C− seen upstream from the node below, its C+ from the old line. */
function meetUpstream(
  next: Float64Array,
  at: number,
  table: SupersonicTable,
  symmetry: Symmetry,
  old: Float64Array,
): void {
  const along = meetInto(next, at, table, symmetry, next, at - NODE, old, at);
  if (along > 0) return;
  throw new ProblemError({
    code: 'shaped-wall-has-shock',
    what: `Characteristics run together near (${next[at]!.toPrecision(4)}, ${next[at + 1]!.toPrecision(4)}) m: no wall turns this flow to the axis without a shock.`,
    mend: 'Expand less sharply before turning back, or ask for a smaller exit Mach number.',
    facts: { axial: next[at]!, radius: next[at + 1]! },
  });
}

/** Where the streamline from `from` crosses the line (axis side first), or null when it passes below its first node. */
function followStreamline(from: ShapedWallPoint, line: Float64Array): ShapedWallPoint | null {
  for (let i = line.length - 2 * NODE; i >= 0; i -= NODE) {
    const share = shareOfCrossing(from, line, i);
    if (share < 0) continue;
    const between = (k: number): number => line[i + k]! + share * (line[i + NODE + k]! - line[i + k]!);
    return { axial: between(0), radius: between(1), angle: between(2), nu: between(3) };
  }
  return null;
}

/** Share of the way along the segment from node i up to the next at which the streamline meets its straight line. */
function shareOfCrossing(from: ShapedWallPoint, line: Float64Array, i: number): number {
  const dx = line[i + NODE]! - line[i]!;
  const dr = line[i + NODE + 1]! - line[i + 1]!;
  let share = 0.5;
  for (let step = 0; step < 8; step++) {
    // Far outside the segment only the side counts, not the direction there.
    const inside = Math.min(Math.max(share, -1), 2);
    const theta = line[i + 2]! + inside * (line[i + NODE + 2]! - line[i + 2]!);
    const c = Math.cos(0.5 * (from.angle + theta));
    const s = Math.sin(0.5 * (from.angle + theta));
    share = ((from.axial - line[i]!) * s - (from.radius - line[i + 1]!) * c) / (dx * s - dr * c);
  }
  return share;
}

/** Where the wall's streamline meets the last C+, behind which the flow is uniform. */
function lipPoint(from: ShapedWallPoint, x0: number, mu: number, nu: number): ShapedWallPoint {
  const slope = Math.tan(0.5 * from.angle);
  const rise = Math.tan(mu);
  const axial = (from.radius - slope * from.axial + rise * x0) / (rise - slope);
  return { axial, radius: rise * (axial - x0), angle: 0, nu };
}

function radiusOfUniformFlow(
  table: SupersonicTable,
  symmetry: Symmetry,
  nu: number,
  massFlow: number,
): number {
  const { knots, step, cells } = table;
  const flux = Math.exp(columnAt(knots.lnDensity, step, cells, nu)) * columnAt(knots.speed, step, cells, nu);
  return symmetry === 'planar' ? massFlow / flux : Math.sqrt(massFlow / (Math.PI * flux));
}

/** The line's nodes from the axis up. */
function upwards(line: Float64Array): Float64Array {
  const turned = new Float64Array(line.length);
  for (let at = 0; at < line.length; at += NODE) {
    turned.set(line.subarray(at, at + NODE), line.length - NODE - at);
  }
  return turned;
}

function pointOf(line: Float64Array, at: number): ShapedWallPoint {
  return { axial: line[at]!, radius: line[at + 1]!, angle: line[at + 2]!, nu: line[at + 3]! };
}
