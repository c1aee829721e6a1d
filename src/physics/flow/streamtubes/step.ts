/**
 * Steady supersonic flow marched downstream in streamtubes, with waves between them.
 *
 * Between neighbouring tubes a plane wave interaction is solved (acoustic in ln p and θ):
 *
 *   lower tube   θ* = θ_l − k_l (ln p* − ln p_l),      upper tube   θ* = θ_u + k_u (ln p* − ln p_u),
 *   k = √(M² − 1) p / (ρ V²)
 *
 * p* pushes on both tubes along the streamline between them, θ* is its direction. Mass and total enthalpy of a tube never
 * change; its momentum changes by the pressure on its sides (and on its ends), so that shocks come out of the balance with
 * their rise of entropy, and streamlines of different entropy stay apart. In round flow the pressure on the two faces of
 * the wedge adds ∫ p dA in the radial direction.
 *
 * Second order where the flow is smooth: slopes across the tubes limited by van Leer's monotonised central rule and
 * half-step values along the streamline from
 *
 *   ∂θ/∂s = −1/(W V²) ∂ln p/∂n,        ∂ln p/∂s = −W V²/(M² − 1) (∂θ/∂n + δ sin θ / r)
 *
 * Source: first-order Godunov march in Lagrangian form after C. Y. Loh & W. H. Hui, J. Comput. Phys. 89 (1990), 207, and
 * B. van Leer, J. Comput. Phys. 32 (1979), 101 for the second order (both from memory; the equations are derived here).
 */

import { isSmall, smallCosine, smallExp, smallSine } from './smallSeries.ts';
import { nuOfSpeed, speedAtPressure, type TubeGas } from './tubeGas.ts';
import { type TubeScratch, tubeScratch, updateTube } from './tubeState.ts';
import type { TubeFront } from './tubes.ts';
import { lengthOf, pieceAt, type WallLine } from './wallLine.ts';

/** What bounds the tubes on one side. */
export type Boundary =
  | { readonly kind: 'axis' }
  | {
      readonly kind: 'pressure';
      readonly lnP: number /** Prandtl–Meyer angle of the gas at that pressure, no shock passed */;
      readonly nu: number;
    }
  | { readonly kind: 'wall'; readonly line: WallLine; along: number; piece: number };

export function wallBoundary(line: WallLine): Boundary {
  return { kind: 'wall', line, along: 0, piece: 0 };
}

/** @param pressure [Pa] of what surrounds the flow */
export function pressureBoundary(gas: TubeGas, pressure: number): Boundary {
  return { kind: 'pressure', lnP: Math.log(pressure), nu: nuOfSpeed(gas, speedAtPressure(gas, pressure, 0)) };
}

/** Work arrays of a march; one for each front size. */
export interface MarchWork {
  readonly slopeP: Float64Array;
  readonly slopeT: Float64Array;
  readonly halfP: Float64Array;
  readonly halfT: Float64Array;
  readonly width: Float64Array;
  readonly lead: Float64Array;
  readonly step: Float64Array;
  readonly toX: Float64Array;
  readonly toR: Float64Array;
  /** Differences of ln p and θ from the end tubes to the boundaries, over a whole tube: lower, upper. */
  readonly endP: Float64Array;
  readonly endT: Float64Array;
  readonly tube: TubeScratch;
}

export function marchWork(count: number): MarchWork {
  const of = (): Float64Array => new Float64Array(count + 1);
  return {
    slopeP: of(),
    slopeT: of(),
    halfP: of(),
    halfT: of(),
    width: of(),
    lead: of(),
    step: of(),
    toX: of(),
    toR: of(),
    endP: new Float64Array(2),
    endT: new Float64Array(2),
    tube: tubeScratch(),
  };
}

/** Forces on the two boundaries in the last step: axial, per radian or per metre of width [N]. */
export interface StepForces {
  lower: number;
  upper: number;
}

/** Share of the distance at which waves from the two sides of a tube meet. */
const COURANT = 0.7;

function limited(a: number, b: number): number {
  if (!(a * b > 0)) return 0;
  const least = 2 * Math.min(Math.abs(a), Math.abs(b));
  const mean = 0.5 * (a + b);
  return Math.abs(mean) < least ? mean : a > 0 ? least : -least;
}

/**
 * March the front one step downstream.
 *
 * Every node moves along its streamline, those that lag behind the normal of the flow further than those ahead, so that
 * the front stays across the flow. Returns the largest step [m]; 0 when a wall ends here.
 * @throws ProblemError where the flow turns subsonic or leaves the gas table
 */
export function stepTubes(
  front: TubeFront,
  gas: TubeGas,
  lower: Boundary,
  upper: Boundary,
  work: MarchWork,
  forces: StepForces,
): number {
  const { count: n, x, r } = front;
  const { step, toX, toR } = work;
  const longest = chooseSteps(front, lower, upper, work);
  // End nodes on walls: where they go fixes the wall's direction over the step.
  moveEnd(front, lower, 0, step, toX, toR);
  moveEnd(front, upper, n, step, toX, toR);
  const lowerTheta = endAngle(front, lower, 0, toX, toR);
  const upperTheta = endAngle(front, upper, n, toX, toR);
  work.endP[0] = 2 * (front.lnP[0]! - endLnP(front, lower, 0));
  work.endP[1] = 2 * (endLnP(front, upper, n) - front.lnP[n - 1]!);
  work.endT[0] = 2 * (front.theta[0]! - lowerTheta);
  work.endT[1] = 2 * (upperTheta - front.theta[n - 1]!);
  findHalfway(front, work);
  faceAtEnd(front, gas, lower, 0, lowerTheta, work);
  faceAtEnd(front, gas, upper, n, upperTheta, work);
  meetAtFaces(front, work);
  moveNodes(front, work, lower.kind === 'pressure' ? 0 : 1, upper.kind === 'pressure' ? n : n - 1);
  pushTubes(front, work, forces);
  x.set(toX);
  r.set(toR);
  for (let j = 0; j < n; j++) {
    if (step[j]! > 0 || step[j + 1]! > 0) updateTube(front, gas, j, work.tube);
  }
  return longest;
}

/** Widths, leads and the step of each node; returns the longest step [m]. */
function chooseSteps(front: TubeFront, lower: Boundary, upper: Boundary, work: MarchWork): number {
  const { count: n, x, r, cosine, sine, beta } = front;
  const { width, lead, step } = work;
  let before =
    lower.kind === 'wall' ? (lengthOf(lower.line) - lower.along) / COURANT : Number.POSITIVE_INFINITY;
  let level = Number.POSITIVE_INFINITY;
  let ahead = 0;
  for (let j = 0; j < n; j++) {
    const c = cosine[j]!;
    const s = sine[j]!;
    const dx = x[j + 1]! - x[j]!;
    const dr = r[j + 1]! - r[j]!;
    const w = dr * c - dx * s;
    const reach = w * beta[j]!;
    width[j] = w;
    lead[j] = ahead;
    const most = ahead + COURANT * (reach < before ? reach : before);
    if (most < level) level = most;
    before = reach;
    ahead += dx * c + dr * s;
  }
  lead[n] = ahead;
  const left = upper.kind === 'wall' ? lengthOf(upper.line) - upper.along : Number.POSITIVE_INFINITY;
  level = Math.min(level, ahead + Math.min(COURANT * before, left));
  let longest = 0;
  for (let i = 0; i <= n; i++) {
    const ds = level - lead[i]!;
    step[i] = ds > 0 ? ds : 0;
    if (ds > longest) longest = ds;
  }
  return longest;
}

/**
 * Slopes across the tubes, and values half a step along the streamline. At the ends the boundary's own value stands half a
 * tube away; where the front leans too far over, the normal derivatives are not known.
 */
function findHalfway(front: TubeFront, work: MarchWork): void {
  const { count: n, r, theta, sine, lnP, bend, beta, round } = front;
  const { width, lead, step, slopeP, slopeT, halfP, halfT, endP, endT } = work;
  let downP = endP[0]!;
  let downT = endT[0]!;
  let p = lnP[0]!;
  let angle = theta[0]!;
  for (let j = 0; j < n; j++) {
    const last = j === n - 1;
    const nextP = last ? p : lnP[j + 1]!;
    const nextT = last ? angle : theta[j + 1]!;
    const upP = last ? endP[1]! : nextP - p;
    const upT = last ? endT[1]! : nextT - angle;
    const sp = limited(downP, upP);
    const st = limited(downT, upT);
    const w = width[j]!;
    const e = lead[j + 1]! - lead[j]!;
    const b = beta[j]!;
    const ratio = bend[j]! / b; // 1 / (W V²)
    const det = w * w - (e * e) / (b * b);
    const ds = 0.25 * (step[j]! + step[j + 1]!);
    slopeP[j] = sp;
    slopeT[j] = st;
    halfP[j] = p;
    halfT[j] = angle;
    if (ds > 0 && det > 0.3 * w * w) {
      const stretch = round ? sine[j]! / (0.5 * (r[j]! + r[j + 1]!)) : 0;
      const a = 1 / (bend[j]! * b);
      const rp = sp + e * a * stretch;
      const part = ds / det;
      halfP[j] = p - a * (part * (w * st + e * ratio * rp) + ds * stretch);
      halfT[j] = angle - ratio * part * (w * rp + e * a * st);
    }
    downP = upP;
    downT = upT;
    p = nextP;
    angle = nextT;
  }
}

/** The wave interaction at every face between two tubes. */
function meetAtFaces(front: TubeFront, work: MarchWork): void {
  const { count: n, bend, faceLnP, faceTheta } = front;
  const { slopeP, slopeT, halfP, halfT } = work;
  let pl = halfP[0]! + 0.5 * slopeP[0]!;
  let tl = halfT[0]! + 0.5 * slopeT[0]!;
  let kl = bend[0]!;
  for (let i = 1; i < n; i++) {
    const hp = halfP[i]!;
    const ht = halfT[i]!;
    const sp = 0.5 * slopeP[i]!;
    const st = 0.5 * slopeT[i]!;
    const ku = bend[i]!;
    const p = (tl - (ht - st) + kl * pl + ku * (hp - sp)) / (kl + ku);
    faceLnP[i] = p;
    faceTheta[i] = tl - kl * (p - pl);
    pl = hp + sp;
    tl = ht + st;
    kl = ku;
  }
}

/** Nodes `first` to `last` go along the faces' direction, which is little turned from the flow's beside them. */
function moveNodes(front: TubeFront, work: MarchWork, first: number, last: number): void {
  const { count: n, x, r, theta, cosine, sine, faceTheta } = front;
  const { step, toX, toR } = work;
  for (let i = first; i <= last; i++) {
    const j = i < n ? i : n - 1;
    const turn = faceTheta[i]! - theta[j]!;
    if (isSmall(turn)) {
      const c = smallCosine(turn);
      const s = smallSine(turn);
      toX[i] = x[i]! + step[i]! * (cosine[j]! * c - sine[j]! * s);
      toR[i] = r[i]! + step[i]! * (sine[j]! * c + cosine[j]! * s);
    } else {
      toX[i] = x[i]! + step[i]! * Math.cos(faceTheta[i]!);
      toR[i] = r[i]! + step[i]! * Math.sin(faceTheta[i]!);
    }
  }
}

/** Pressure on the sides of every tube over the step, and on the faces of its wedge in round flow. */
function pushTubes(front: TubeFront, work: MarchWork, forces: StepForces): void {
  const { count: n, x, r, momentumX, momentumR, lnP, pressure, faceLnP, faceP, round } = front;
  const { toX, toR } = work;
  for (let i = 0; i <= n; i++) {
    const dx = toX[i]! - x[i]!;
    const dr = toR[i]! - r[i]!;
    if (dx === 0 && dr === 0) {
      if (i === 0) forces.lower = 0;
      if (i === n) forces.upper = 0;
      continue;
    }
    const j = i < n ? i : n - 1;
    const rise = faceLnP[i]! - lnP[j]!;
    const p = isSmall(rise) ? pressure[j]! * smallExp(rise) : Math.exp(faceLnP[i]!);
    faceP[i] = p;
    const area = p * (round ? 0.5 * (toR[i]! + r[i]!) : 1);
    if (i < n) {
      momentumX[i] = momentumX[i]! - area * dr;
      momentumR[i] = momentumR[i]! + area * dx;
    }
    if (i > 0) {
      momentumX[i - 1] = momentumX[i - 1]! + area * dr;
      momentumR[i - 1] = momentumR[i - 1]! - area * dx;
    }
    if (i === 0) forces.lower = area * dr;
    if (i === n) forces.upper = -area * dr;
  }
  if (!round) return;
  for (let j = 0; j < n; j++) {
    // Quadrilateral old lower, new lower, new upper, old upper: half the cross product of its diagonals.
    const ax = toX[j + 1]! - x[j]!;
    const ar = toR[j + 1]! - r[j]!;
    const bx = x[j + 1]! - toX[j]!;
    const br = r[j + 1]! - toR[j]!;
    const area = 0.5 * (ax * br - ar * bx);
    momentumR[j] = momentumR[j]! + 0.5 * (faceP[j]! + faceP[j + 1]!) * area;
  }
}

function moveEnd(
  front: TubeFront,
  boundary: Boundary,
  node: number,
  step: Float64Array,
  toX: Float64Array,
  toR: Float64Array,
): void {
  if (boundary.kind === 'axis') {
    toX[node] = front.x[node]! + step[node]!;
    toR[node] = 0;
  } else if (boundary.kind === 'wall') {
    const { line } = boundary;
    boundary.along = Math.min(boundary.along + step[node]!, lengthOf(line));
    boundary.piece = pieceAt(line, boundary.along, boundary.piece);
    const k = boundary.piece;
    const share = (boundary.along - line.along[k]!) / (line.along[k + 1]! - line.along[k]!);
    toX[node] = line.x[k]! + share * (line.x[k + 1]! - line.x[k]!);
    toR[node] = line.r[k]! + share * (line.r[k + 1]! - line.r[k]!);
  }
}

function endAngle(
  front: TubeFront,
  boundary: Boundary,
  node: number,
  toX: Float64Array,
  toR: Float64Array,
): number {
  if (boundary.kind === 'axis') return 0;
  if (boundary.kind === 'pressure') return front.faceTheta[node]!;
  const dx = toX[node]! - front.x[node]!;
  const dr = toR[node]! - front.r[node]!;
  return dx === 0 && dr === 0 ? front.faceTheta[node]! : Math.atan2(dr, dx);
}

/** ln p at an end: given, or that of the last step. */
function endLnP(front: TubeFront, boundary: Boundary, node: number): number {
  return boundary.kind === 'pressure' ? boundary.lnP : front.faceLnP[node]!;
}

/** Jump of ln p at a free boundary below which a wave counts as weak. */
const SMALL_JUMP = 0.03;

function faceAtEnd(
  front: TubeFront,
  gas: TubeGas,
  boundary: Boundary,
  node: number,
  angle: number,
  work: MarchWork,
): void {
  const tube = node === 0 ? 0 : node - 1;
  const side = node === 0 ? -0.5 : 0.5;
  const lnP = work.halfP[tube]! + side * work.slopeP[tube]!;
  const theta = work.halfT[tube]! + side * work.slopeT[tube]!;
  // Positive at the lower end, negative at the upper.
  const bend = node === 0 ? front.bend[0]! : -front.bend[tube]!;
  if (boundary.kind === 'pressure') {
    front.faceLnP[node] = boundary.lnP;
    const jump = boundary.lnP - lnP;
    if (Math.abs(jump) < SMALL_JUMP) front.faceTheta[node] = theta + bend * jump;
    else {
      const turn = nuOfSpeed(gas, front.speed[tube]!) - boundary.nu;
      front.faceTheta[node] = theta + (bend > 0 ? turn : -turn);
    }
  } else {
    front.faceTheta[node] = angle;
    front.faceLnP[node] = lnP + (angle - theta) / bend;
  }
}
