/**
 * From one line across the flow to the next: each new node is solved backwards, both its characteristics traced to the
 * line before (the inverse form of the method of characteristics).
 *
 * Nodes stand where they are put, so that characteristics which run together do not tangle the net: an internal shock is
 * smeared over some nodes, its entropy rise (third order in its strength) left out. States at the feet come from cubics
 * through four nodes of the old line; between the old and the new wall point, and on the axis, from straight lines.
 *
 * Source: the inverse (reference-line) scheme of every text on characteristics, e.g. M. J. Zucrow, J. D. Hoffman, Gas
 * Dynamics, vol. 2, 1977 (from memory).
 */

import { ProblemError } from '../../numerics/problem.ts';
import { columnAt, requireInTable, type SupersonicTable } from './gasTable.ts';
import { NODE, type Symmetry } from './points.ts';

/** Correctors stop when θ and ν move less than this [rad]: well below the truncation error of the nets in use. */
const TOLERANCE = 1e-7;
/** Second order needs one corrector; where a shock is smeared more of them would only hunt to and fro across it. */
const MOST_CORRECTORS = 4;
/** How far a cubic may leave the two nodes between which it stands, as a share of their difference [–]. */
const ROOM = 0.25;

/** The line before with the new wall node put ahead of it and the new axis node behind it. */
export class OldLine {
  readonly nodes: Float64Array;
  readonly count: number;

  constructor(count: number) {
    this.count = count;
    this.nodes = new Float64Array((count + 2) * NODE);
  }

  /** Take the line; the new ends coincide with the old ones until they are solved. */
  take(from: Float64Array, first: number): void {
    const { nodes, count } = this;
    nodes.set(from.subarray(first, first + count * NODE), NODE);
    nodes.copyWithin(0, NODE, 2 * NODE);
    nodes.copyWithin((count + 1) * NODE, count * NODE, (count + 1) * NODE);
  }

  setWall(from: Float64Array, at: number): void {
    this.nodes.set(from.subarray(at, at + NODE), 0);
  }

  setAxis(from: Float64Array, at: number): void {
    this.nodes.set(from.subarray(at, at + NODE), (this.count + 1) * NODE);
  }
}

/** Where a characteristic met the old line: x, r, θ, ν, μ, and the segment for the next search. */
export interface Foot {
  readonly state: Float64Array;
  segment: number;
}

export function newFoot(): Foot {
  return { state: new Float64Array(NODE), segment: 0 };
}

/**
 * Where the straight line through (x, r) in direction `angle` meets the old line.
 * @throws ProblemError where it misses it: the step is too long
 */
function traceInto(
  foot: Foot,
  old: OldLine,
  table: SupersonicTable,
  x: number,
  r: number,
  angle: number,
): void {
  const { nodes, count } = old;
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  const side = (i: number): number => (nodes[i * NODE + 1]! - r) * c - (nodes[i * NODE]! - x) * s;
  let i = foot.segment;
  let above = side(i);
  let below = side(i + 1);
  while (above < 0 && i > 0) {
    i--;
    below = above;
    above = side(i);
  }
  while (below > 0 && i < count) {
    i++;
    above = below;
    below = side(i + 1);
  }
  foot.segment = i;
  const gap = above - below;
  const share = gap > 0 ? above / gap : 0;
  if (!(share > -0.05 && share < 1.05)) missed(x, r);
  stateInto(foot.state, old, table, i, share);
}

/** State of the old line the share of the way from node i to the next. */
function stateInto(out: Float64Array, old: OldLine, table: SupersonicTable, i: number, share: number): void {
  const { nodes, count } = old;
  if (i === 0 || i === count) {
    const at = i * NODE;
    for (let k = 0; k < 4; k++) out[k] = nodes[at + k]! + share * (nodes[at + NODE + k]! - nodes[at + k]!);
  } else {
    const first = Math.min(Math.max(i - 1, 1), count - 3);
    const t = i + share - first;
    const w0 = -((t - 1) * (t - 2) * (t - 3)) / 6;
    const w1 = (t * (t - 2) * (t - 3)) / 2;
    const w2 = -(t * (t - 1) * (t - 3)) / 2;
    const w3 = (t * (t - 1) * (t - 2)) / 6;
    let at = first * NODE;
    for (let k = 0; k < 4; k++, at++) {
      out[k] =
        w0 * nodes[at]! + w1 * nodes[at + NODE]! + w2 * nodes[at + 2 * NODE]! + w3 * nodes[at + 3 * NODE]!;
    }
  }
  // A cubic overshoots at a shock.
  for (let k = 2; k < 4; k++) {
    const a = nodes[i * NODE + k]!;
    const b = nodes[(i + 1) * NODE + k]!;
    const room = ROOM * Math.abs(b - a);
    const value = out[k]!;
    out[k] = Math.min(Math.max(value, Math.min(a, b) - room), Math.max(a, b) + room);
  }
  const nu = out[3]!;
  if (!(nu >= 0 && nu <= table.nuMax)) requireInTable(table, nu);
  out[4] = columnAt(table.knots.mu, table.step, table.cells, nu);
}

/** sin θ sin μ / r; on the axis the limit given by `slope` = sin θ / r nearby. */
function source(theta: number, r: number, mu: number, slope: number): number {
  return (r > 0 ? Math.sin(theta) / r : slope) * Math.sin(mu);
}

/** Solve the node at `at`, whose x and r are set, inside the flow. */
export function innerNodeInto(
  out: Float64Array,
  at: number,
  table: SupersonicTable,
  symmetry: Symmetry,
  old: OldLine,
  down: Foot,
  up: Foot,
): void {
  const x = out[at]!;
  const r = out[at + 1]!;
  let theta = out[at + 2]!;
  let nu = out[at + 3]!;
  let mu = out[at + 4]!;
  const round = symmetry === 'axisymmetric';
  const d = down.state;
  const u = up.state;
  for (let step = 0; ; step++) {
    const angleDown = step === 0 ? theta - mu : 0.5 * (theta - mu + d[2]! - d[4]!);
    const angleUp = step === 0 ? theta + mu : 0.5 * (theta + mu + u[2]! + u[4]!);
    traceInto(down, old, table, x, r, angleDown);
    traceInto(up, old, table, x, r, angleUp);
    let minus = d[2]! + d[3]!;
    let plus = u[2]! - u[3]!;
    if (round) {
      const slope = Math.sin(theta) / r;
      const here = slope * Math.sin(mu);
      const s = Math.hypot(x - d[0]!, r - d[1]!);
      const t = Math.hypot(x - u[0]!, r - u[1]!);
      minus += 0.5 * s * (source(d[2]!, d[1]!, d[4]!, slope) + here);
      plus -= 0.5 * t * (source(u[2]!, u[1]!, u[4]!, slope) + here);
    }
    const nextTheta = 0.5 * (minus + plus);
    const nextNu = 0.5 * (minus - plus);
    const moved = Math.abs(nextTheta - theta) + Math.abs(nextNu - nu);
    theta = nextTheta;
    nu = nextNu;
    if (!(nu >= 0 && nu <= table.nuMax)) requireInTable(table, nu);
    mu = columnAt(table.knots.mu, table.step, table.cells, nu);
    if (moved < TOLERANCE || step === MOST_CORRECTORS) break;
  }
  out[at + 2] = theta;
  out[at + 3] = nu;
  out[at + 4] = mu;
}

/** Solve the wall node at `at`, whose x, r and θ are set. */
export function wallNodeInto(
  out: Float64Array,
  at: number,
  table: SupersonicTable,
  symmetry: Symmetry,
  old: OldLine,
  up: Foot,
): void {
  const x = out[at]!;
  const r = out[at + 1]!;
  const theta = out[at + 2]!;
  let nu = out[at + 3]!;
  let mu = out[at + 4]!;
  const u = up.state;
  for (let step = 0; ; step++) {
    traceInto(up, old, table, x, r, step === 0 ? theta + mu : 0.5 * (theta + mu + u[2]! + u[4]!));
    let plus = u[2]! - u[3]!;
    if (symmetry === 'axisymmetric') {
      const slope = Math.sin(theta) / r;
      const t = Math.hypot(x - u[0]!, r - u[1]!);
      plus -= 0.5 * t * (source(u[2]!, u[1]!, u[4]!, slope) + slope * Math.sin(mu));
    }
    const moved = Math.abs(theta - plus - nu);
    nu = theta - plus;
    if (!(nu >= 0 && nu <= table.nuMax)) requireInTable(table, nu);
    mu = columnAt(table.knots.mu, table.step, table.cells, nu);
    if (moved < TOLERANCE || step === MOST_CORRECTORS) break;
  }
  out[at + 3] = nu;
  out[at + 4] = mu;
}

/** Solve the axis node at `at`, whose x is set. */
export function axisNodeInto(
  out: Float64Array,
  at: number,
  table: SupersonicTable,
  symmetry: Symmetry,
  old: OldLine,
  down: Foot,
): void {
  const x = out[at]!;
  let nu = out[at + 3]!;
  let mu = out[at + 4]!;
  const d = down.state;
  for (let step = 0; ; step++) {
    traceInto(down, old, table, x, 0, step === 0 ? -mu : 0.5 * (-mu + d[2]! - d[4]!));
    let minus = d[2]! + d[3]!;
    if (symmetry === 'axisymmetric' && d[1]! > 0) {
      const slope = Math.sin(d[2]!) / d[1]!;
      minus += 0.5 * Math.hypot(x - d[0]!, d[1]!) * slope * (Math.sin(d[4]!) + Math.sin(mu));
    }
    const moved = Math.abs(minus - nu);
    nu = minus;
    if (!(nu >= 0 && nu <= table.nuMax)) requireInTable(table, nu);
    mu = columnAt(table.knots.mu, table.step, table.cells, nu);
    if (moved < TOLERANCE || step === MOST_CORRECTORS) break;
  }
  out[at + 1] = 0;
  out[at + 2] = 0;
  out[at + 3] = nu;
  out[at + 4] = mu;
}

function missed(x: number, r: number): never {
  throw new ProblemError({
    code: 'characteristic-misses-line',
    what: `A characteristic traced back from (${x.toPrecision(4)}, ${r.toPrecision(4)}) m misses the line before it.`,
    why: 'the flow there turns more within one step than the net can follow',
    mend: 'Use a finer net, or a contour that turns less sharply.',
    facts: { x, r },
  });
}
