import { tableStateAt } from '../../flow/gasTable.ts';
import { straightRayRadius } from '../../flow/plugWall.ts';
import type { PlugGeometry } from './geometry.ts';

/** A point of the approximate wall; sizes over the throat radius, axial from the lip. */
export interface StraightRayPoint {
  readonly axial: number;
  readonly radius: number;
}

const POINTS = 60;

/**
 * The wall of the outer fan by straight rays of one Mach number each, beside the wall by characteristics.
 *
 *   r² = r_lip² − (A_t/π) ε(M) M sin φ,   x = (r_lip − r)/tan φ,   φ = ν_e − ν(M) + μ(M)        (A_t = π here)
 *
 * Source: G. Angelino, AIAA J. 2(10), 1964, 1834 (from memory). Planar flow has exactly such rays, so that there is nothing to
 * set beside a linear plug.
 */
export function straightRayWall({ table, lip, nuLip, nuExit }: PlugGeometry): readonly StraightRayPoint[] {
  return Array.from({ length: POINTS + 1 }, (_, i) => {
    const nu = nuLip + ((nuExit - nuLip) * i) / POINTS;
    const { mach, mu, density, speed } = tableStateAt(table, nu);
    const phi = nuExit - nu + mu;
    const areaRatio = table.sonicMassFlux / (density * speed);
    const radius = straightRayRadius(lip.radius, Math.PI, areaRatio, mach, phi);
    return { axial: (lip.radius - radius) / Math.tan(phi), radius };
  });
}

/** Largest distance in radius between that wall and the one by characteristics, over the lip radius [–]; 0 where planar. */
export function straightRayDeparture(geometry: PlugGeometry): number {
  if (geometry.symmetry === 'planar') return 0;
  const wall = geometry.wholeWall.slice(geometry.lipRayFoot);
  let largest = 0;
  for (const { axial, radius } of straightRayWall(geometry)) {
    const i = wall.findIndex((point) => point.axial >= axial);
    if (i < 1) continue;
    const [a, b] = [wall[i - 1]!, wall[i]!];
    const exact = a.radius + ((b.radius - a.radius) * (axial - a.axial)) / (b.axial - a.axial);
    largest = Math.max(largest, Math.abs(exact - radius));
  }
  return largest / geometry.lip.radius;
}
