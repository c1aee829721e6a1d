/**
 * The wall of a whole plug for its design condition: all expansion in one fan at the outer lip, exit flow uniform and axial.
 *
 * Known are the fan's last characteristic, a straight C− from the lip to the plug's tip behind which the flow is uniform,
 * and the states at the lip itself, where θ − ν = −ν_exit for every ray. The rays before the last are found one after the
 * other, upstream: each node lies where its ray (C−) meets the C+ that runs on to the next ray. A ray ends at the wall:
 * where the flow between lip and wall is the whole mass flow.
 *
 * Source: the design condition and the one-fan flow are those of G. Angelino, AIAA J. 2(10), 1964, 1834, who approximates
 * the rays as straight and uniform; here they are neither in round flow (`straightRayRadius` gives his wall). From memory.
 */

import { attempt, ProblemError } from '../../numerics/problem.ts';
import { flowAcross } from './axialFlow.ts';
import { type SupersonicTable, tableStateAt } from './gasTable.ts';
import { meetInto, NODE, type Symmetry, setNodeInto } from './points.ts';
import { endAtWall } from './rayEnd.ts';
import type { ShapedWallPoint } from './turnToAxial.ts';

export interface PlugWall {
  /** From the throat's foot on the plug to the tip; axial distance from the lip. */
  readonly wall: readonly ShapedWallPoint[];
  /** Nodes of the first ray, lip first, wall last: what the throat must deliver. */
  readonly firstRay: Float64Array;
  /** Nodes of every ray, lip first, wall last; the first is `firstRay`, each ends at the wall point of its number. */
  readonly rays: readonly Float64Array[];
  /** [kg/s], planar: per metre of width */ readonly massFlow: number;
}

/**
 * Shape the plug.
 * @param lipRadius radius of the outer lip [m]; planar: height of the lip above the plane of symmetry
 * @param nuInner Prandtl–Meyer angle at the lip before the fan [rad]; above 0 where the flow is round
 * @param nuExit Prandtl–Meyer angle of the exit flow [rad]
 * @throws ProblemError when the flow would have to come from more than 90° or leaves the gas table
 */
export function plugWall(
  table: SupersonicTable,
  symmetry: Symmetry,
  lipRadius: number,
  nuInner: number,
  nuExit: number,
  rays: number,
): PlugWall {
  requireTurn(nuInner, nuExit);
  const exit = tableStateAt(table, nuExit);
  const area = symmetry === 'planar' ? lipRadius : Math.PI * lipRadius ** 2;
  const massFlow = exit.density * exit.speed * area;
  const tip = { axial: lipRadius / Math.tan(exit.mu), radius: 0, angle: 0, nu: nuExit };
  for (const nearTip of NEAR_TIP) {
    const found = attempt(() => raysUpstream(nearTip));
    if (found.ok) return found.value;
    if (nearTip === NEAR_TIP[NEAR_TIP.length - 1]) throw new ProblemError(found.problem);
  }
  throw new Error('No share of the tip is left to try');

  function raysUpstream(nearTip: number): PlugWall {
    let ray = lastRay(table, lipRadius, nuExit, 2 * rays, nearTip);
    const wall: ShapedWallPoint[] = [tip];
    const found: Float64Array[] = [];
    for (let k = rays - 1; k >= 0; k--) {
      const nu = nuInner + (nuExit - nuInner) * (k / rays) ** 1.5;
      ray = rayBefore(table, symmetry, ray, nu, nuExit, massFlow);
      wall.push(pointOf(ray, ray.length - NODE));
      found.push(ray);
    }
    return { wall: wall.reverse(), firstRay: ray, rays: found.reverse(), massFlow };
  }
}

/**
 * Wall radius by straight rays, each of one Mach number: the mass flow through the frustum of the ray [m].
 *
 *   r² = r_lip² − (A_t / π) ε(M) M sin(μ − θ),     θ = ν − ν_exit
 *
 * @param throatArea A_t [m²]
 * @param areaRatio ε(M) [–]
 * @param rayAngle μ − θ [rad]
 * Source: Angelino 1964, in this form derived here. Round flow only.
 */
export function straightRayRadius(
  lipRadius: number,
  throatArea: number,
  areaRatio: number,
  mach: number,
  rayAngle: number,
): number {
  return Math.sqrt(
    Math.max(lipRadius ** 2 - (throatArea / Math.PI) * areaRatio * mach * Math.sin(rayAngle), 0),
  );
}

/**
 * Share of the lip radius below which the last ray has no nodes: where the rings close, the net would not settle. The first
 * that lets it settle is taken.
 */
const NEAR_TIP = [0.06, 0.1, 0.16, 0.25];

/** The straight C− from the lip towards the tip, uniform flow. */
function lastRay(
  table: SupersonicTable,
  lipRadius: number,
  nuExit: number,
  count: number,
  nearTip: number,
): Float64Array {
  const nodes = new Float64Array((count + 1) * NODE);
  const { mu } = tableStateAt(table, nuExit);
  for (let i = 0; i <= count; i++) {
    const r = lipRadius * (1 - (1 - nearTip) * (i / count));
    setNodeInto(nodes, i * NODE, table, (lipRadius - r) / Math.tan(mu), r, 0, nuExit);
  }
  return nodes;
}

/** The ray upstream of `after`, from the lip (where ν is given) to the wall. */
function rayBefore(
  table: SupersonicTable,
  symmetry: Symmetry,
  after: Float64Array,
  nu: number,
  nuExit: number,
  massFlow: number,
): Float64Array {
  const nodes = new Float64Array(after.length + NODE);
  setNodeInto(nodes, 0, table, after[0]!, after[1]!, nu - nuExit, nu);
  let carried = 0;
  for (let at = NODE; ; at += NODE) {
    if (at >= after.length) wallNotFound(nodes[at - NODE]!, nodes[at - NODE + 1]!);
    const met = attempt(() => meetInto(nodes, at, table, symmetry, nodes, at - NODE, after, at));
    if (!met.ok) {
      // Below the wall, where the rings close on the axis, a node need not exist: the ray goes on as it came.
      if (at < 3 * NODE || after[at + 1]! > CLOSING * after[1]!) throw new ProblemError(met.problem);
      continueStraight(nodes, at);
    }
    const more = flowAcross(nodes, at - NODE, 2, table, symmetry).massFlow;
    if (met.ok && carried + more < massFlow && at + NODE < after.length) carried += more;
    else {
      // At the end of the ray after, the wall lies on the segment or a little beyond it.
      endAtWall(nodes, at, table, symmetry, massFlow - carried, 1, MOST_BEYOND);
      return nodes.slice(0, at + NODE);
    }
  }
}

/** Share of the lip radius below which a ray may go on straight where a node cannot be found. */
const CLOSING = 0.3;

function continueStraight(nodes: Float64Array, at: number): void {
  for (let k = 0; k < NODE; k++) nodes[at + k] = 2 * nodes[at - NODE + k]! - nodes[at - 2 * NODE + k]!;
}

/** Segments by which the wall may lie beyond the last node: near the tip, where the nodes end before the wall. */
const MOST_BEYOND = 40;

function pointOf(nodes: Float64Array, at: number): ShapedWallPoint {
  return { axial: nodes[at]!, radius: nodes[at + 1]!, angle: nodes[at + 2]!, nu: nodes[at + 3]! };
}

function requireTurn(nuInner: number, nuExit: number): void {
  const turn = nuExit - nuInner;
  if (turn > 0 && turn < Math.PI / 2) return;
  const degrees = (turn * 180) / Math.PI;
  throw new ProblemError({
    code: 'plug-turn-out-of-range',
    what: `The fan at the lip would have to turn the flow by ${degrees.toFixed(1)}°; it must be above 0° and below 90°.`,
    why: 'the throat would have to point outward past the radial direction, or there is nothing to expand',
    mend: 'Expand further inside before the lip (a higher inner Mach number), or ask for a smaller area ratio.',
    facts: { nuInner, nuExit },
  });
}

function wallNotFound(axial: number, radius: number): never {
  throw new ProblemError({
    code: 'plug-wall-not-found',
    what: `A ray of the plug's fan ends near (${axial.toPrecision(4)}, ${radius.toPrecision(4)}) m before it carries the whole flow.`,
    mend: 'Use more rays.',
    facts: { axial, radius },
  });
}
