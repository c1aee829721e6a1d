/**
 * The inner expansion of a plug nozzle, between cowl and plug, found upstream from the ray with which the outer fan begins.
 *
 *   1  From that ray (C−, lip to plug) upstream to the C+ that ends at the lip: the plug's side is a straight wall, each node
 *      lies where a C+ seen upstream from the ray before meets the C− seen upstream from the node nearer the wall.
 *   2  That C+ leaves the plug's wall at a corner. There one fan turns the flow, θ + ν keeping its value; the C+ rays before
 *      the last are found one after the other, each from the corner to the cowl, which lies where the ray carries the whole flow.
 *
 * So the lip's fan gets exactly the flow that it was designed for, and no wave is left over. The same construction as that of
 * the outer fan, on the other side; derived here. Planar: uniform between the two fans, the cowl a streamline of a simple wave.
 */

import { ProblemError } from '../../numerics/problem.ts';
import { flowAcross } from './axialFlow.ts';
import type { SupersonicTable } from './gasTable.ts';
import { meetInto, NODE, type Symmetry, setNodeInto } from './points.ts';
import { endAtWall } from './rayEnd.ts';
import type { ShapedWallPoint } from './turnToAxial.ts';

export interface PlugInside {
  /** From the first ray to the lip. */ readonly cowl: readonly ShapedWallPoint[];
  /** From the corner to the foot of the ray that was given. */ readonly plugSide: readonly ShapedWallPoint[];
  /** C− lines between the corner's last C+ and the ray that was given, nodes from that C+ to the plug; the ray's neighbour first. */
  readonly between: readonly Float64Array[];
  /** Nodes of the first ray (C+ of the corner), cowl first, corner last. */ readonly firstRay: Float64Array;
}

/**
 * @param ray nodes of the C− from the lip to the plug, lip first
 * @param massFlow that it carries [kg/s], planar: per metre of width
 * @param nuFirst Prandtl–Meyer angle [rad] at the corner before its fan; above 0 where the flow is round
 * @param rays of the corner's fan
 * @throws ProblemError where characteristics don't meet or the flow leaves the gas table
 */
export function plugInside(
  table: SupersonicTable,
  symmetry: Symmetry,
  ray: Float64Array,
  massFlow: number,
  nuFirst: number,
  rays: number,
): PlugInside {
  const { last, plugSide, between } = backToCorner(table, symmetry, ray);
  const corner = last.slice(0, NODE);
  const cowl: ShapedWallPoint[] = [pointOf(ray, 0)];
  let fanRay = last;
  for (let k = rays - 1; k >= 0; k--) {
    const nu = nuFirst + (corner[3]! - nuFirst) * (k / rays) ** 1.5;
    fanRay = rayBefore(table, symmetry, fanRay, corner, nu, massFlow);
    cowl.push(pointOf(fanRay, fanRay.length - NODE));
  }
  const foot = corner[2]! + corner[3]! - nuFirst;
  const side = [{ axial: corner[0]!, radius: corner[1]!, angle: foot, nu: nuFirst }, ...plugSide];
  return { cowl: cowl.reverse(), plugSide: side, between, firstRay: turned(fanRay) };
}

/** Step 1: the C+ that ends at the lip, corner first, and the plug's wall from the corner to the ray's foot. */
function backToCorner(
  table: SupersonicTable,
  symmetry: Symmetry,
  ray: Float64Array,
): {
  readonly last: Float64Array;
  readonly plugSide: readonly ShapedWallPoint[];
  readonly between: readonly Float64Array[];
} {
  const count = ray.length / NODE;
  const end = ray.length - NODE;
  const wall = { x: ray[end]!, r: ray[end + 1]!, theta: ray[end + 2]! };
  const plugSide = [pointOf(ray, end)];
  const ends: Float64Array[] = [ray.slice(0, NODE)];
  const between: Float64Array[] = [];
  let old = ray;
  for (let length = count - 1; length >= 1; length--) {
    const next = new Float64Array(length * NODE);
    const foot = (length - 1) * NODE;
    meetStraightWall(next, foot, table, symmetry, wall, old, foot);
    for (let at = foot - NODE; at >= 0; at -= NODE) {
      meetInto(next, at, table, symmetry, next, at + NODE, old, at);
    }
    plugSide.push(pointOf(next, foot));
    ends.push(next.slice(0, NODE));
    between.push(next);
    old = next;
  }
  const last = new Float64Array(ends.length * NODE);
  ends.reverse().forEach((node, i) => {
    last.set(node, i * NODE);
  });
  return { last, plugSide: plugSide.reverse(), between };
}

const MOST_STEPS = 60;

/** Where the C+ through node `b`, seen upstream, meets the straight wall through `wall` at its angle. */
function meetStraightWall(
  out: Float64Array,
  at: number,
  table: SupersonicTable,
  symmetry: Symmetry,
  wall: { readonly x: number; readonly r: number; readonly theta: number },
  b: Float64Array,
  ib: number,
): void {
  const [bx, br, bTheta, bNu, bMu] = [b[ib]!, b[ib + 1]!, b[ib + 2]!, b[ib + 3]!, b[ib + 4]!];
  const c = Math.cos(wall.theta);
  const s = Math.sin(wall.theta);
  let nu = wall.theta - (bTheta - bNu);
  let mu = bMu;
  for (let step = 0; step < MOST_STEPS; step++) {
    const up = 0.5 * (bTheta + bMu + wall.theta + mu);
    const cross = c * Math.sin(up) - s * Math.cos(up);
    const along = ((bx - wall.x) * Math.sin(up) - (br - wall.r) * Math.cos(up)) / cross;
    const x = wall.x + along * c;
    const r = wall.r + along * s;
    const length = (bx - x) * Math.cos(up) + (br - r) * Math.sin(up);
    let plus = bTheta - bNu;
    if (symmetry === 'axisymmetric') {
      plus +=
        0.5 * length * ((Math.sin(wall.theta) / r) * Math.sin(mu) + (Math.sin(bTheta) / br) * Math.sin(bMu));
    }
    const moved = Math.abs(wall.theta - plus - nu);
    nu = wall.theta - plus;
    setNodeInto(out, at, table, x, r, wall.theta, nu);
    mu = out[at + 4]!;
    if (step > 1 && moved < 1e-11) return;
  }
  throw new ProblemError({
    code: 'characteristics-not-converged',
    what: `The wall of the plug near (${out[at]!.toPrecision(4)}, ${out[at + 1]!.toPrecision(4)}) did not settle.`,
    mend: 'Ask for another inner Mach number.',
    facts: { axial: out[at]!, radius: out[at + 1]! },
  });
}

/** Step 2: the C+ ray of the corner upstream of `after`, where ν is given at the corner, to the cowl. */
function rayBefore(
  table: SupersonicTable,
  symmetry: Symmetry,
  after: Float64Array,
  corner: Float64Array,
  nu: number,
  massFlow: number,
): Float64Array {
  const nodes = new Float64Array(after.length + NODE);
  setNodeInto(nodes, 0, table, corner[0]!, corner[1]!, corner[2]! + corner[3]! - nu, nu);
  let carried = 0;
  for (let at = NODE; ; at += NODE) {
    const beyond = at >= after.length;
    if (beyond) copyBeyond(nodes, at, table);
    else meetInto(nodes, at, table, symmetry, after, at, nodes, at - NODE);
    const more = -flowAcross(nodes, at - NODE, 2, table, symmetry).massFlow;
    if (carried + more < massFlow && at + NODE < after.length) carried += more;
    else {
      endAtWall(nodes, at, table, symmetry, massFlow - carried, -1, MOST_BEYOND);
      return nodes.slice(0, at + NODE);
    }
  }
}

/** A node as far beyond the last as that is from the one before it. */
function copyBeyond(nodes: Float64Array, at: number, table: SupersonicTable): void {
  const next = (k: number): number => 2 * nodes[at - NODE + k]! - nodes[at - 2 * NODE + k]!;
  setNodeInto(nodes, at, table, next(0), next(1), next(2), next(3));
}

/** Segments by which the wall may lie beyond the last node. */
const MOST_BEYOND = 3;

function pointOf(nodes: Float64Array, at: number): ShapedWallPoint {
  return { axial: nodes[at]!, radius: nodes[at + 1]!, angle: nodes[at + 2]!, nu: nodes[at + 3]! };
}

function turned(nodes: Float64Array): Float64Array {
  const out = new Float64Array(nodes.length);
  for (let at = 0; at < nodes.length; at += NODE) {
    out.set(nodes.subarray(at, at + NODE), nodes.length - NODE - at);
  }
  return out;
}
