import { tableStateAt } from '../../flow/gasTable.ts';
import { NODE } from '../../flow/points.ts';
import type { KeptFronts } from '../../flow/streamtubes/march.ts';
import type { PlugGeometry, PlugWallPressure } from './geometry.ts';

/** A point of the flow; sizes over the throat radius, axial from the throat's plug side. */
export interface FieldPoint {
  readonly axial: number;
  readonly radius: number;
  /** [Pa] */ readonly pressure: number;
}

/** Lines across the flow one after the other downstream, each with the same number of points, plug side first. */
export type FieldLines = readonly (readonly FieldPoint[])[];

/** Points on a line, and lines of each kind at most: what a picture shows. */
const ACROSS = 9;
const MOST_LINES = 28;

/** The flow on a plug at one ambient pressure as lines across it, from the throat line to the cut. */
export function plugFieldLines(geometry: PlugGeometry, flow: PlugWallPressure): FieldLines {
  const origin = geometry.wall[0]!.axial;
  const lines = [...insideLines(geometry), ...rayLines(geometry, flow.raysUsed)];
  if (flow.fronts !== null) lines.push(...frontLines(flow.fronts));
  return lines.map((line) => line.map((point) => ({ ...point, axial: point.axial - origin })));
}

/** From the corner to points of the cowl: C+ rays of the inner fan, of even pressure where the flow is planar. */
function insideLines(geometry: PlugGeometry): FieldPoint[][] {
  const { cowl, throatLine, table, wall } = geometry;
  if (cowl.length < 2) return [];
  const foot = throatLine.length - NODE;
  const corner = { axial: throatLine[foot]!, radius: throatLine[foot + 1]! };
  const pressureAt = (nu: number): number => tableStateAt(table, nu).pressure;
  const inner = thinned(cowl, MOST_LINES / 3).map(({ axial, radius, nu }) => {
    const pressure = pressureAt(nu);
    return straight({ ...corner, pressure }, { axial, radius, pressure });
  });
  const lip = cowl[cowl.length - 1]!;
  // Between the corner's last ray and the lip's first the plug's straight wall goes by, the lip staying where it is.
  const along = wall.slice(0, geometry.lipRayFoot).map(({ axial, radius, nu }) => {
    const at = { axial, radius, pressure: pressureAt(nu) };
    return straight(at, { axial: lip.axial, radius: lip.radius, pressure: pressureAt(lip.nu) });
  });
  return [...inner, ...thinned(along, 4)];
}

/** Rays of the lip's fan up to the cut, or to where the march takes over. */
function rayLines(geometry: PlugGeometry, used: number): FieldPoint[][] {
  const { rays, wholeWall, lipRayFoot, cut } = geometry;
  const footOf = (k: number): number => wholeWall[lipRayFoot + k]!.axial;
  const count = rays.filter((_, k) => k <= used && footOf(k) <= cut.axial * (1 + 1e-9)).length;
  const lines = rays.slice(0, count).map((ray) => pointsOn(geometry, ray));
  // The ray that ends at the cut or where the march begins lies between two of the net.
  if (count > 0 && count < rays.length) {
    const t = Math.min(
      used - (count - 1),
      (cut.axial - footOf(count - 1)) / (footOf(count) - footOf(count - 1)),
    );
    if (t > 1e-6 && t < 1) lines.push(mixed(lines[count - 1]!, pointsOn(geometry, rays[count]!), t));
  }
  return [...thinned(lines, MOST_LINES)];
}

function pointsOn({ table }: PlugGeometry, ray: Float64Array): FieldPoint[] {
  return Array.from({ length: ACROSS }, (_, i) => {
    const place = ((ray.length / NODE - 1) * (ACROSS - 1 - i)) / (ACROSS - 1);
    const at = (c: number): number => between(ray, place, c);
    return { axial: at(0), radius: at(1), pressure: tableStateAt(table, at(3)).pressure };
  });
}

function mixed(a: readonly FieldPoint[], b: readonly FieldPoint[], t: number): FieldPoint[] {
  return a.map((from, i) => {
    const to = b[i]!;
    return {
      axial: from.axial + t * (to.axial - from.axial),
      radius: from.radius + t * (to.radius - from.radius),
      pressure: from.pressure * (to.pressure / from.pressure) ** t,
    };
  });
}

function between(ray: Float64Array, place: number, c: number): number {
  const i = Math.min(Math.floor(place), ray.length / NODE - 2);
  const t = place - i;
  return ray[i * NODE + c]! * (1 - t) + ray[(i + 1) * NODE + c]! * t;
}

/** Fronts of the march: nodes at even numbers, each with the mean pressure of the tubes beside it. */
function frontLines({ tubes, x, r, lnP }: KeptFronts): FieldPoint[][] {
  const numbers = thinned(
    x.map((_, i) => i),
    2 * MOST_LINES,
  );
  return numbers.map((k) =>
    Array.from({ length: ACROSS }, (_, i) => {
      const node = Math.round((tubes * i) / (ACROSS - 1));
      const below = lnP[k]![Math.max(node - 1, 0)]!;
      const above = lnP[k]![Math.min(node, tubes - 1)]!;
      return { axial: x[k]![node]!, radius: r[k]![node]!, pressure: Math.exp(0.5 * (below + above)) };
    }),
  );
}

function straight(from: FieldPoint, to: FieldPoint): FieldPoint[] {
  return Array.from({ length: ACROSS }, (_, i) => {
    const t = i / (ACROSS - 1);
    return {
      axial: from.axial + t * (to.axial - from.axial),
      radius: from.radius + t * (to.radius - from.radius),
      pressure: from.pressure * (to.pressure / from.pressure) ** t,
    };
  });
}

/** At most `most` of the items, first and last among them. */
function thinned<T>(items: readonly T[], most: number): readonly T[] {
  if (items.length <= most) return items;
  const count = Math.max(2, Math.floor(most));
  return Array.from({ length: count }, (_, i) => items[Math.round((i * (items.length - 1)) / (count - 1))]!);
}
