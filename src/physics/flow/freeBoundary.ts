/**
 * A jet into still surroundings: characteristics inside, constant pressure on its boundary.
 *
 * On the boundary the pressure is the ambient's, so ν is known; θ comes with the C+ that arrives from inside
 * (dθ = dν − sin μ sin θ/r ds along it), and the boundary is the streamline through these points.
 * Each line of the net is a C− from a boundary point inward, as along a wall.
 *
 * Compressions that the boundary sends back run together downstream: the first place where two characteristics of one
 * family meet is reported, and every line ends there, so that only what no shock can have reached is computed.
 *
 * Source: any text on characteristics, e.g. A. H. Shapiro, Compressible Fluid Flow, vol. 1, 1953, ch. 15; E. S. Love et al.,
 * NASA TR R-6, 1959, for round jets (both from memory). Second order.
 */

import { ProblemError } from '../../numerics/problem.ts';
import type { SupersonicTable } from './gasTable.ts';
import type { CharacteristicNet } from './net.ts';
import { meetAxisInto, meetInto, muAt, NODE, type Symmetry, setNodeInto } from './points.ts';

/** Where characteristics of one family first meet. */
export interface Crossing {
  readonly axial: number;
  readonly radius: number;
  /** C−: sent back by the boundary; C+: come back from the axis. */ readonly family: 'C−' | 'C+';
}

/** Turns below this are rounding of the gas table [rad]. */
const MATCHED = 1e-7;

/** A jet under way. */
export interface Jet {
  readonly net: CharacteristicNet;
  readonly table: SupersonicTable;
  readonly symmetry: Symmetry;
  /** ν on the boundary [rad] */ readonly boundaryNu: number;
  /** Nothing is computed further down than this [m]. */ readonly axialLimit: number;
  /** The first crossing; null while there is none. */ crossing: Crossing | null;
  /** False once a line has ended short of the axis. */ reachesAxis: boolean;
  /** Number of the line of the net that leaves the lip after all expansion there. */ lipLine: number;
}

/**
 * Begin with a line across the flow, nodes from lip to axis (an exit plane): the C− lines from its nodes one after the
 * other, from the axis up, the last one that from the lip.
 */
export function beginAcross(jet: Jet, line: Float64Array): void {
  const { net } = jet;
  const count = line.length / NODE;
  for (let k = count - 1; k >= 0; k--) {
    const first = net.openLine(count - k + 1);
    net.nodes.set(line.subarray(k * NODE, (k + 1) * NODE), first);
    if (k === count - 1) net.closeLine(1);
    else completeJetLine(jet, first, -1);
  }
}

/** Begin with a line that is a C−, nodes from lip to axis. */
export function beginAlong(jet: Jet, line: Float64Array): void {
  const count = line.length / NODE;
  jet.net.nodes.set(line, jet.net.openLine(count));
  jet.net.closeLine(count);
}

/**
 * Turn the flow at the first node of the net's last line to the boundary's pressure by a centred expansion, outwards, in
 * `rays` lines. No turn, no lines.
 */
export function expandAtLip(jet: Jet, rays: number): void {
  const { net, table } = jet;
  const lip = net.nodes.slice(net.offset(net.lineCount - 1, 0), net.offset(net.lineCount - 1, 0) + NODE);
  const turn = jet.boundaryNu - lip[3]!;
  if (turn < -MATCHED) compressionAtLip(lip[3]!, jet.boundaryNu);
  if (turn > MATCHED) {
    for (let ray = 1; ray <= rays; ray++) {
      const turned = turn * (ray / rays);
      const first = net.openLine(net.lineLength(net.lineCount - 1) + 1);
      setNodeInto(net.nodes, first, table, lip[0]!, lip[1]!, lip[2]! + turned, lip[3]! + turned);
      completeJetLine(jet, first, 0);
    }
  }
  jet.lipLine = net.lineCount - 1;
}

/**
 * March lines from the boundary until nothing more can be computed or the boundary passes the axial limit.
 * @returns how many boundary points were found
 */
export function marchJet(jet: Jet, mostLines = 2000): number {
  const { net } = jet;
  let made = 0;
  while (made < mostLines) {
    const line = net.lineCount - 1;
    if (net.lineLength(line) < 2) return made;
    const before = net.offset(line, 0);
    if (net.nodes[before]! > jet.axialLimit) return made;
    const first = net.openLine(net.lineLength(line) + 1);
    const forward = boundaryPointInto(
      net.nodes,
      first,
      jet.table,
      jet.symmetry,
      before,
      before + NODE,
      jet.boundaryNu,
    );
    if (!(forward > 0)) return made;
    completeJetLine(jet, first, 1);
    made++;
  }
  return made;
}

/**
 * The boundary point reached by the C+ from node `foot`, on the streamline from the boundary point `before`.
 * @returns length along the boundary [m]; not above 0 where the C+ has passed the point before
 */
export function boundaryPointInto(
  nodes: Float64Array,
  at: number,
  table: SupersonicTable,
  symmetry: Symmetry,
  before: number,
  foot: number,
  nu: number,
): number {
  const mu = muAt(table, nu);
  const plus = nodes[foot + 2]! - nodes[foot + 3]!;
  let theta = nodes[before + 2]!;
  let x = 0;
  let r = 0;
  let forward = 0;
  for (let step = 0; step < 60; step++) {
    const flow = 0.5 * (nodes[before + 2]! + theta);
    const wave = 0.5 * (nodes[foot + 2]! + nodes[foot + 4]! + theta + mu);
    const cross = Math.cos(flow) * Math.sin(wave) - Math.sin(flow) * Math.cos(wave);
    const dx = nodes[foot]! - nodes[before]!;
    const dr = nodes[foot + 1]! - nodes[before + 1]!;
    forward = (dx * Math.sin(wave) - dr * Math.cos(wave)) / cross;
    const along = (dx * Math.sin(flow) - dr * Math.cos(flow)) / cross;
    x = nodes[before]! + forward * Math.cos(flow);
    r = nodes[before + 1]! + forward * Math.sin(flow);
    let next = plus + nu;
    if (symmetry === 'axisymmetric') {
      const here = (Math.sin(theta) / r) * Math.sin(mu);
      const atFoot =
        nodes[foot + 1]! > 0
          ? (Math.sin(nodes[foot + 2]!) / nodes[foot + 1]!) * Math.sin(nodes[foot + 4]!)
          : here;
      next -= 0.5 * along * (atFoot + here);
    }
    const moved = Math.abs(next - theta);
    theta = next;
    if (step > 0 && moved < 1e-12) break;
  }
  setNodeInto(nodes, at, table, x, r, theta, nu);
  return forward;
}

/** Complete and close the line whose first node stands at `first`, whose C+ came from node `foot` of the line before. */
function completeJetLine(jet: Jet, first: number, foot: number): void {
  const { net, table, symmetry } = jet;
  const line = net.lineCount - 1;
  const count = net.lineLength(line);
  const old = net.offset(line, 0);
  const { nodes } = net;
  let made = 1;
  let cut = false;
  for (let j = foot + 1; j < count && !cut; j++) {
    const ahead = old + j * NODE;
    const at = first + made * NODE;
    if (made > 1 && tooNearAxis(nodes, at - NODE, ahead)) {
      // The axis point of the line before stands in, and sends its C+ to a later line.
      nodes.copyWithin(at, ahead, ahead + NODE);
      net.closeLine(made + 1);
      return;
    }
    cut = !meetForward(jet, at, ahead);
    if (!cut && nodes[at + 1]! <= 0) cut = true;
    if (!cut) made++;
  }
  if (!cut && jet.reachesAxis) {
    const at = first + made * NODE;
    const down = nodes[at - NODE + 2]! - nodes[at - NODE + 4]!;
    const reach = nodes[at - NODE + 1]! / Math.tan(-down);
    if (down < 0 && nodes[at - NODE]! + reach < 2 * jet.axialLimit) {
      meetAxisInto(nodes, at, table, symmetry, nodes, at - NODE);
      made++;
    } else cut = true;
  }
  if (cut) jet.reachesAxis = false;
  net.closeLine(made);
}

/** A node nearer the axis than this share of the one above it would not settle: sin θ/r there is a quotient of two errors. */
const NEAR_AXIS = 0.3;

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
  // A centred expansion begins with two nodes in one place.
  if (overtakes(nodes, before, ahead)) {
    noteCrossing(jet, nodes[ahead]!, nodes[ahead + 1]!, 'C−');
    return false;
  }
  const alongPlus = tryToMeet(() => meetInto(nodes, at, table, symmetry, nodes, before, nodes, ahead));
  const angle = nodes[before + 2]! - nodes[before + 4]!;
  const alongMinus =
    (nodes[at]! - nodes[before]!) * Math.cos(angle) + (nodes[at + 1]! - nodes[before + 1]!) * Math.sin(angle);
  if (!(alongPlus > 0 && alongMinus > 0)) {
    noteCrossing(jet, nodes[ahead]!, nodes[ahead + 1]!, alongPlus > 0 ? 'C+' : 'C−');
    return false;
  }
  return nodes[at]! <= jet.axialLimit;
}

/** Characteristics that have all but run together have no point of meeting that settles: as good as crossed. */
function tryToMeet(meet: () => number): number {
  try {
    return meet();
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

/** Whether `old` lies on the downstream side of the C− that leaves `from`: then that C− has overtaken the line of `old`. */
function overtakes(nodes: Float64Array, from: number, old: number): boolean {
  const angle = 0.5 * (nodes[from + 2]! - nodes[from + 4]! + nodes[old + 2]! - nodes[old + 4]!);
  const dx = nodes[old]! - nodes[from]!;
  const dr = nodes[old + 1]! - nodes[from + 1]!;
  return Math.cos(angle) * dr - Math.sin(angle) * dx >= 0;
}

function compressionAtLip(lipNu: number, boundaryNu: number): never {
  throw new ProblemError({
    code: 'shock-at-lip',
    what: 'The ambient pressure is above that of the flow at the lip: a shock begins at the lip itself.',
    mend: 'Ask at a lower ambient pressure, or for the shock.',
    facts: { lipNu, boundaryNu },
  });
}
