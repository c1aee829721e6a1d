import { tableStateAt } from '../../flow/gasTable.ts';
import type { WallStation } from '../model.ts';
import type { PlugSurface } from './designForces.ts';
import type { PlugGeometry, PlugWallPressure, PlugWallState } from './geometry.ts';

function stateOf(
  { table }: PlugGeometry,
  { axial, radius, nu }: { axial: number; radius: number; nu: number },
): PlugWallState {
  const { pressure, mach, temperature } = tableStateAt(table, nu);
  return { axial, radius, pressure, mach, temperature };
}

export function wallStatesOf(geometry: PlugGeometry): readonly PlugWallState[] {
  return geometry.wall.map((point) => stateOf(geometry, point));
}

export function cowlStatesOf(geometry: PlugGeometry): readonly PlugWallState[] {
  return geometry.cowl.map((point) => stateOf(geometry, point));
}

/** Axial distance counts from the throat's plug side here, as a bell's does from its throat. */
export function stationsOf(geometry: PlugGeometry, wall: readonly PlugWallState[]): readonly WallStation[] {
  const origin = geometry.wall[0]!.axial;
  return wall.map((point) => ({ ...point, axial: point.axial - origin }));
}

/** Pressure of the off-design flow on plug and cowl, over the areas of the design's surfaces. */
export function offDesignForces(
  surfaces: readonly PlugSurface[],
  geometry: PlugGeometry,
  flow: PlugWallPressure,
  p0: number,
): readonly PlugSurface[] {
  return surfaces.map((part) => {
    if (part.surface === 'plug') {
      return { ...part, vacuum: (pressureForce(geometry, flow.stations) + restForce(geometry, flow)) / p0 };
    }
    if (part.surface === 'inner cowl') return { ...part, vacuum: -pressureForce(geometry, flow.cowl) / p0 };
    return part;
  });
}

/**
 * Push on what of the plug lies behind the field's last station: the point of a whole plug, too thin for tubes, or half a
 * step before a cut; at the last station's pressure.
 */
function restForce(geometry: PlugGeometry, { stations }: PlugWallPressure): number {
  const last = stations[stations.length - 1]!;
  return last.pressure * restArea(geometry, last);
}

/** The same over p0 A_t for the control volume, where the field ends ahead of a whole plug's point. */
export function restCoefficient(
  geometry: PlugGeometry,
  { stations }: PlugWallPressure,
  felt: number,
): number {
  if (geometry.cut.radius > 0) return 0;
  const last = stations[stations.length - 1]!;
  return ((last.pressure - felt) * restArea(geometry, last)) / geometry.table.stagnationPressure;
}

function restArea(geometry: PlugGeometry, last: PlugWallState): number {
  const round = geometry.symmetry === 'axisymmetric';
  const inside = (r: number): number => geometry.areaScale * (round ? Math.PI * r * r : r);
  return inside(last.radius) - inside(geometry.cut.radius);
}

function pressureForce(geometry: PlugGeometry, wall: readonly PlugWallState[]): number {
  const round = geometry.symmetry === 'axisymmetric';
  const inside = (r: number): number => geometry.areaScale * (round ? Math.PI * r * r : r);
  let force = 0;
  for (let i = 1; i < wall.length; i++) {
    const [a, b] = [wall[i - 1]!, wall[i]!];
    force += 0.5 * (a.pressure + b.pressure) * (inside(a.radius) - inside(b.radius));
  }
  return force;
}
