/**
 * Where the ambient pressure is above the lip's, a shock leaves the lip, steeper than the ray there. The flow is then known up
 * to a line across it from the lip to the plug: it lies between the last C+ of the inner fan, which ends at the lip, and
 * the lip's first ray. Its nodes lie where it crosses the C− lines between the two.
 */

import { NODE, setNodeInto } from '../../flow/points.ts';
import type { PlugGeometry } from './geometry.ts';

export interface LineAtLip {
  /** Wall first, lip last. */ readonly nodes: Float64Array;
  /** Its foot as a number of the wall's points, with its fraction. */ readonly onWall: number;
}

/** null where there is no inner fan, or the line would reach the plug ahead of it. */
export function acrossAtLip(geometry: PlugGeometry): LineAtLip | null {
  const { wall, lipRayFoot, lip, lipRay, between, table } = geometry;
  const theta = lipRay[2]!;
  const ahead = (axial: number, radius: number): number =>
    (axial - lip.axial) * Math.cos(theta) + (radius - lip.radius) * Math.sin(theta);
  let i = lipRayFoot;
  while (i > 0 && ahead(wall[i]!.axial, wall[i]!.radius) > 0) i--;
  if (i === lipRayFoot || ahead(wall[i]!.axial, wall[i]!.radius) > 0) return null;
  const [a, b] = [wall[i]!, wall[i + 1]!];
  const from = ahead(a.axial, a.radius);
  const t = -from / (ahead(b.axial, b.radius) - from);
  const mix = (p: number, q: number): number => p + t * (q - p);
  const found = [lipRay.slice(0, NODE), ...between.flatMap((line) => crossing(line, ahead) ?? [])];
  const nodes = new Float64Array((found.length + 1) * NODE);
  setNodeInto(
    nodes,
    0,
    table,
    mix(a.axial, b.axial),
    mix(a.radius, b.radius),
    mix(a.angle, b.angle),
    mix(a.nu, b.nu),
  );
  found.reverse().forEach((node, k) => {
    nodes.set(node, (k + 1) * NODE);
  });
  return { nodes: evenly(nodes), onWall: i + t };
}

const PIECES = 64;

/** The line's nodes at equal distances. */
function evenly(nodes: Float64Array): Float64Array {
  const count = nodes.length / NODE;
  const along = new Float64Array(count);
  for (let i = 1; i < count; i++) {
    const at = i * NODE;
    along[i] =
      along[i - 1]! + Math.hypot(nodes[at]! - nodes[at - NODE]!, nodes[at + 1]! - nodes[at - NODE + 1]!);
  }
  const out = new Float64Array((PIECES + 1) * NODE);
  let i = 0;
  for (let k = 0; k <= PIECES; k++) {
    const wanted = (along[count - 1]! * k) / PIECES;
    while (i < count - 2 && along[i + 1]! < wanted) i++;
    const t = (wanted - along[i]!) / (along[i + 1]! - along[i]!);
    for (let c = 0; c < NODE; c++) {
      out[k * NODE + c] = nodes[i * NODE + c]! + t * (nodes[(i + 1) * NODE + c]! - nodes[i * NODE + c]!);
    }
  }
  return out;
}

/** The node where a line from outside to the plug passes from behind the line across to ahead of it; null where it does not. */
function crossing(
  line: Float64Array,
  ahead: (axial: number, radius: number) => number,
): readonly Float64Array[] | null {
  for (let at = NODE; at < line.length; at += NODE) {
    const before = ahead(line[at - NODE]!, line[at - NODE + 1]!);
    const here = ahead(line[at]!, line[at + 1]!);
    if (!(before <= 0 && here > 0)) continue;
    const t = -before / (here - before);
    return [
      Float64Array.from(
        { length: NODE },
        (_, c) => line[at - NODE + c]! + t * (line[at + c]! - line[at - NODE + c]!),
      ),
    ];
  }
  return null;
}
