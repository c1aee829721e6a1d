import { flowAcross } from '../../flow/axialFlow.ts';
import { tableStateAt } from '../../flow/gasTable.ts';
import { NODE } from '../../flow/points.ts';
import { CHAMBER_SURFACE, type ThrustPart } from '../model.ts';
import type { PlugGeometry, PlugWallPoint } from './geometry.ts';

/** A surface of a plug engine: its push in vacuum and the area it shows to the front, both over p0 A_t and A_t [–]. */
export interface PlugSurface {
  readonly surface: string;
  readonly vacuum: number;
  readonly area: number;
}

/**
 * Push of the design flow in vacuum on all surfaces but the base.
 *
 *   chamber     momentum flux and pressure across the throat line, along the axis
 *   inner cowl  −∫ p dA,  plug  +∫ p dA,  A the area inside the wall's radius, which shrinks downstream
 *
 * The flow on them does not depend on the ambient pressure as long as that is at most `frozenBelow`.
 */
export function designForces(geometry: PlugGeometry, stagnationPressure: number): readonly PlugSurface[] {
  const { table, symmetry, throatLine, cowl, wall } = geometry;
  const unit = geometry.areaScale / stagnationPressure;
  const count = throatLine.length / NODE;
  const throatForce = flowAcross(throatLine, 0, count, table, symmetry).axialForce;
  const outer = throatLine[1]!;
  const inner = throatLine[throatLine.length - NODE + 1]!;
  const area = (from: number, to: number): number =>
    geometry.areaScale * (areaInside(geometry, from) - areaInside(geometry, to));
  const parts: PlugSurface[] = [
    { surface: CHAMBER_SURFACE, vacuum: unit * throatForce, area: area(outer, inner) },
  ];
  if (cowl.length > 1) {
    parts.push({
      surface: 'inner cowl',
      vacuum: -unit * wallForce(geometry, cowl),
      area: -area(outer, geometry.lip.radius),
    });
  }
  parts.push({
    surface: 'plug',
    vacuum: unit * wallForce(geometry, wall),
    area: area(inner, geometry.cut.radius),
  });
  return parts;
}

/** Area inside a radius in the geometry's own units: circle, or height of a planar half. */
export function areaInside({ symmetry }: PlugGeometry, radius: number): number {
  return symmetry === 'axisymmetric' ? Math.PI * radius * radius : radius;
}

/** Base area over throat area [–]. */
export function baseArea(geometry: PlugGeometry): number {
  return geometry.areaScale * areaInside(geometry, geometry.cut.radius);
}

/** ∫ p dA over the area by which a wall shrinks [Pa times throat radii squared, planar: throat radii]. */
function wallForce(geometry: PlugGeometry, wall: readonly PlugWallPoint[]): number {
  const pressureAt = ({ nu }: PlugWallPoint): number => tableStateAt(geometry.table, nu).pressure;
  let force = 0;
  let before = pressureAt(wall[0]!);
  for (let i = 1; i < wall.length; i++) {
    const here = pressureAt(wall[i]!);
    const shrinks = areaInside(geometry, wall[i - 1]!.radius) - areaInside(geometry, wall[i]!.radius);
    force += 0.5 * (before + here) * shrinks;
    before = here;
  }
  return force;
}

/** A ray of the lip's fan as a whole. */
interface WholeRay {
  /** Prandtl–Meyer angle at the lip [rad] */ readonly nuAtLip: number;
  /** Axial momentum flux plus pressure across it, in the geometry's own units. */ readonly axialForce: number;
}

/** The ray of the lip's fan that ends at the cut: between two rays linear by the wall's axial distance. */
export function cutRay(geometry: PlugGeometry): WholeRay {
  const { rays, wholeWall, lipRayFoot, cut } = geometry;
  if (cut.radius === 0) return lastRay(geometry);
  let i = 1;
  while (i < rays.length && wholeWall[lipRayFoot + i]!.axial < cut.axial) i++;
  const a = wholeWall[lipRayFoot + i - 1]!;
  // Behind the last ray that was marched the wall has points of its own, up to the tip's.
  const b = i < rays.length ? wholeWall[lipRayFoot + i]! : wholeWall[wholeWall.length - 1]!;
  const t = (cut.axial - a.axial) / (b.axial - a.axial);
  const mix = (p: number, q: number): number => p + t * (q - p);
  const [before, after] = [wholeRay(geometry, i - 1), wholeRay(geometry, i)];
  return {
    nuAtLip: mix(before.nuAtLip, after.nuAtLip),
    axialForce: mix(before.axialForce, after.axialForce),
  };
}

function wholeRay(geometry: PlugGeometry, number: number): WholeRay {
  const nodes = geometry.rays[number];
  if (nodes === undefined) return lastRay(geometry);
  const { axialForce } = flowAcross(nodes, 0, nodes.length / NODE, geometry.table, geometry.symmetry);
  return { nuAtLip: nodes[3]!, axialForce };
}

/** The fan's last ray, behind which the flow is uniform and axial. */
function lastRay(geometry: PlugGeometry): WholeRay {
  const { speed, pressure } = tableStateAt(geometry.table, geometry.nuExit);
  return {
    nuAtLip: geometry.nuExit,
    axialForce: geometry.massFlow * speed + pressure * areaInside(geometry, geometry.lip.radius),
  };
}

/** Parts at an ambient pressure [Pa]: each less the ambient pressure on the area it shows to the front. */
export function partsAt(
  surfaces: readonly PlugSurface[],
  ambientPressure: number,
  stagnationPressure: number,
): ThrustPart[] {
  return surfaces.map(({ surface, vacuum, area }) => ({
    surface,
    coefficient: vacuum - (area * ambientPressure) / stagnationPressure,
  }));
}
