/**
 * Where the ambient pressure is above the lip's, a shock leaves the lip, steeper than the ray there. The flow is then known up
 * to a line across it from the lip to the plug: it lies between the last C+ of the inner fan, which ends at the lip, and
 * the lip's first ray. Along it θ and ν go linearly from the lip to the plug's wall; in a linear plug they are constant.
 */

import { NODE, setNodeInto } from '../../flow/points.ts';
import type { PlugGeometry, PlugWallPoint } from './geometry.ts';

export interface LineAtLip {
  /** Wall first, lip last. */ readonly nodes: Float64Array;
  /** Its foot as a number of the wall's points, with its fraction. */ readonly onWall: number;
}

const PIECES = 64;

/** null where there is no inner wall ahead of the lip's ray, or the line would end ahead of it. */
export function acrossAtLip(geometry: PlugGeometry): LineAtLip | null {
  const { wall, lipRayFoot, lip, lipRay, table } = geometry;
  const theta = lipRay[2]!;
  const nu = lipRay[3]!;
  const ahead = (point: PlugWallPoint): number =>
    (point.axial - lip.axial) * Math.cos(theta) + (point.radius - lip.radius) * Math.sin(theta);
  let i = lipRayFoot;
  while (i > 0 && ahead(wall[i]!) > 0) i--;
  if (i === lipRayFoot || ahead(wall[i]!) > 0) return null;
  const a = wall[i]!;
  const b = wall[i + 1]!;
  const t = -ahead(a) / (ahead(b) - ahead(a));
  const mix = (p: number, q: number, share: number): number => p + share * (q - p);
  const foot = {
    x: mix(a.axial, b.axial, t),
    r: mix(a.radius, b.radius, t),
    theta: mix(a.angle, b.angle, t),
    nu: mix(a.nu, b.nu, t),
  };
  const nodes = new Float64Array((PIECES + 1) * NODE);
  for (let k = 0; k <= PIECES; k++) {
    const s = k / PIECES;
    setNodeInto(
      nodes,
      k * NODE,
      table,
      mix(foot.x, lip.axial, s),
      mix(foot.r, lip.radius, s),
      mix(foot.theta, theta, s),
      mix(foot.nu, nu, s),
    );
  }
  return { nodes, onWall: i + t };
}
