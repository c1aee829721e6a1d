/**
 * Unit processes of the method of characteristics: steady, isentropic, irrotational, supersonic flow.
 *
 *   along C∓ (direction θ ∓ μ):   d(θ ± ν) = ± δ · sin μ sin θ / r · ds,      ds > 0 downstream
 *
 * θ flow angle, ν Prandtl–Meyer angle, μ Mach angle, δ = 0 planar, 1 axisymmetric.
 * Source: any text on characteristics, e.g. J. D. Anderson, Modern Compressible Flow, ch. 11, with
 * 1/(cot μ ∓ cot θ) · dr/r = sin μ sin θ / sin(θ ∓ μ) · dr/r = sin μ sin θ / r · ds (identity; from memory, and closed by
 * the exact source-flow test).
 *
 * A step is a predictor and correctors with averaged directions and source terms: second order. Down to the axis, where
 * 1/r changes manifold along a step, θ and r are averaged instead of their quotient. Directions are kept as
 * angles, not slopes, so that steep characteristics need no special case. A node is five numbers in a Float64Array.
 */

import { ProblemError } from '../../numerics/problem.ts';
import { columnAt, requireInTable, type SupersonicTable } from './gasTable.ts';

/** Numbers per node: x [m], r [m], θ [rad], ν [rad], μ [rad]. */
export const NODE = 5;

export type Symmetry = 'planar' | 'axisymmetric';

/** Correctors stop when θ and ν move less than this [rad]: far below the truncation error of any mesh in use. */
const TOLERANCE = 1e-11;
const MOST_STEPS = 40;

/** μ(ν) straight from the table. */
export function muAt(table: SupersonicTable, nu: number): number {
  return columnAt(table.knots.mu, table.step, table.cells, nu);
}

/** Write a node; μ follows from ν. */
export function setNodeInto(
  out: Float64Array,
  at: number,
  table: SupersonicTable,
  x: number,
  r: number,
  theta: number,
  nu: number,
): void {
  requireInTable(table, nu);
  out[at] = x;
  out[at + 1] = r;
  out[at + 2] = theta;
  out[at + 3] = nu;
  out[at + 4] = muAt(table, nu);
}

/** sin θ / r of a node, or of `other` when the node lies on the axis, where the quotient is a limit. */
function curvatureTerm(theta: number, r: number, otherTheta: number, otherR: number): number {
  if (r > 1e-12 * (otherR > 0 ? otherR : 1)) return Math.sin(theta) / r;
  return otherR > 0 ? Math.sin(otherTheta) / otherR : 0;
}

/**
 * Where C− of node `a` (of `from`) meets C+ of node `b`; the new node is written to `out` at `at`.
 * @returns arc length along C+ from b [m]; negative where characteristics of one family have crossed
 * @throws ProblemError when the characteristics don't meet or the state leaves the gas table
 */
export function meetInto(
  out: Float64Array,
  at: number,
  table: SupersonicTable,
  symmetry: Symmetry,
  a: Float64Array,
  ia: number,
  b: Float64Array,
  ib: number,
): number {
  const ax = a[ia]!;
  const ar = a[ia + 1]!;
  const aTheta = a[ia + 2]!;
  const aNu = a[ia + 3]!;
  const aMu = a[ia + 4]!;
  const bx = b[ib]!;
  const br = b[ib + 1]!;
  const bTheta = b[ib + 2]!;
  const bNu = b[ib + 3]!;
  const bMu = b[ib + 4]!;
  const minus = aTheta + aNu;
  const plus = bTheta - bNu;
  let theta = 0.5 * (minus + plus);
  let nu = 0.5 * (minus - plus);
  let mu = 0.5 * (aMu + bMu);
  let x = 0;
  let r = 0;
  let t = 0;
  const round = symmetry === 'axisymmetric';
  for (let step = 0; ; step++) {
    const downAngle = 0.5 * (aTheta - aMu + theta - mu);
    const upAngle = 0.5 * (bTheta + bMu + theta + mu);
    const cd = Math.cos(downAngle);
    const sd = Math.sin(downAngle);
    const cu = Math.cos(upAngle);
    const su = Math.sin(upAngle);
    const cross = cd * su - sd * cu;
    if (!(Math.abs(cross) > 1e-9)) notMeeting(ax, ar, bx, br);
    const s = ((bx - ax) * su - (br - ar) * cu) / cross;
    t = ((bx - ax) * sd - (br - ar) * cd) / cross;
    x = ax + s * cd;
    r = ar + s * sd;
    let newMinus = minus;
    let newPlus = plus;
    if (round) {
      const here = curvatureTerm(theta, r, aTheta, ar) * Math.sin(mu);
      newMinus +=
        2 * r < ar
          ? (s * Math.sin(0.5 * (aTheta + theta)) * Math.sin(0.5 * (aMu + mu))) / (0.5 * (ar + r))
          : 0.5 * s * (curvatureTerm(aTheta, ar, theta, r) * Math.sin(aMu) + here);
      newPlus -= 0.5 * t * (curvatureTerm(bTheta, br, theta, r) * Math.sin(bMu) + here);
    }
    const nextTheta = 0.5 * (newMinus + newPlus);
    const nextNu = 0.5 * (newMinus - newPlus);
    const moved = Math.abs(nextTheta - theta) + Math.abs(nextNu - nu);
    theta = nextTheta;
    nu = nextNu;
    if (!(nu >= 0 && nu <= table.nuMax)) requireInTable(table, nu);
    mu = columnAt(table.knots.mu, table.step, table.cells, nu);
    if (step > 0 && moved < TOLERANCE) break;
    if (step > MOST_STEPS) notConverged('interior', x, r, moved);
  }
  out[at] = x;
  out[at + 1] = r;
  out[at + 2] = theta;
  out[at + 3] = nu;
  out[at + 4] = mu;
  return t;
}

/** Where C− of node `a` reaches the axis (planar: the plane of symmetry); θ = 0 there. */
export function meetAxisInto(
  out: Float64Array,
  at: number,
  table: SupersonicTable,
  symmetry: Symmetry,
  a: Float64Array,
  ia: number,
): void {
  const ax = a[ia]!;
  const ar = a[ia + 1]!;
  const aTheta = a[ia + 2]!;
  const aMu = a[ia + 4]!;
  const minus = aTheta + a[ia + 3]!;
  const curvature = symmetry === 'axisymmetric' ? Math.sin(aTheta) / ar : 0;
  let nu = minus;
  let mu = muAt(table, Math.min(nu, table.nuMax));
  let x = 0;
  for (let step = 0; ; step++) {
    const angle = 0.5 * (aTheta - aMu - mu);
    const s = -ar / Math.sin(angle);
    x = ax + s * Math.cos(angle);
    const nextNu = minus + 0.5 * s * curvature * (Math.sin(aMu) + Math.sin(mu));
    const moved = Math.abs(nextNu - nu);
    nu = nextNu;
    requireInTable(table, nu);
    mu = muAt(table, nu);
    if (step > 0 && moved < TOLERANCE) break;
    if (step > MOST_STEPS) notConverged('axis', x, 0, moved);
  }
  out[at] = x;
  out[at + 1] = 0;
  out[at + 2] = 0;
  out[at + 3] = nu;
  out[at + 4] = mu;
}

/**
 * The state at a wall point (x, r, θ known) whose C+ comes from the segment between nodes i and j of `line`.
 * @returns the foot's share of the way from i to j; outside 0…1 the foot lies on another segment
 */
export function wallFromSegmentInto(
  out: Float64Array,
  at: number,
  table: SupersonicTable,
  symmetry: Symmetry,
  line: Float64Array,
  i: number,
  j: number,
): number {
  const x = out[at]!;
  const r = out[at + 1]!;
  const theta = out[at + 2]!;
  const round = symmetry === 'axisymmetric';
  const dx = line[j]! - line[i]!;
  const dr = line[j + 1]! - line[i + 1]!;
  let share = 0.5;
  let nu = line[i + 3]!;
  let mu = line[i + 4]!;
  for (let step = 0; ; step++) {
    const fTheta = line[i + 2]! + share * (line[j + 2]! - line[i + 2]!);
    const fNu = line[i + 3]! + share * (line[j + 3]! - line[i + 3]!);
    const fMu = line[i + 4]! + share * (line[j + 4]! - line[i + 4]!);
    const angle = 0.5 * (fTheta + fMu + theta + mu);
    const c = Math.cos(angle);
    const s = Math.sin(angle);
    const cross = dx * s - dr * c;
    if (!(Math.abs(cross) > 1e-14 * (Math.abs(dx) + Math.abs(dr)))) notMeeting(x, r, line[i]!, line[i + 1]!);
    share = ((x - line[i]!) * s - (r - line[i + 1]!) * c) / cross;
    if (!(share > -4 && share < 5)) return share;
    const fx = line[i]! + share * dx;
    const fr = line[i + 1]! + share * dr;
    const length = (x - fx) * c + (r - fr) * s;
    let plus = fTheta - fNu;
    if (round) {
      const foot = curvatureTerm(fTheta, fr, theta, r) * Math.sin(fMu);
      plus -= 0.5 * length * (foot + (Math.sin(theta) / r) * Math.sin(mu));
    }
    const nextNu = theta - plus;
    const moved = Math.abs(nextNu - nu);
    nu = nextNu;
    if (!(nu >= 0 && nu <= table.nuMax)) {
      if (share < 0 || share > 1) return share;
      requireInTable(table, nu);
    }
    mu = muAt(table, nu);
    if (step > 1 && moved < TOLERANCE) break;
    if (step > MOST_STEPS) notConverged('wall', x, r, moved);
  }
  out[at + 3] = nu;
  out[at + 4] = mu;
  return share;
}

function notMeeting(ax: number, ar: number, bx: number, br: number): never {
  throw new ProblemError({
    code: 'characteristics-do-not-meet',
    what: `Two characteristics, from (${ax.toPrecision(4)}, ${ar.toPrecision(4)}) m and (${bx.toPrecision(4)}, ${br.toPrecision(4)}) m, run side by side and never meet.`,
    why: 'the flow there is not the smooth supersonic flow that characteristics describe',
    mend: 'Use a finer start line, or a contour that turns less sharply.',
    facts: { ax, ar, bx, br },
  });
}

function notConverged(kind: string, x: number, r: number, residual: number): never {
  throw new ProblemError({
    code: 'characteristics-not-converged',
    what: `The ${kind} point of the characteristic net near (${x.toPrecision(4)}, ${r.toPrecision(4)}) m did not settle (last change ${residual.toExponential(1)} rad).`,
    mend: 'Use a finer net.',
    facts: { x, r, residual },
  });
}
