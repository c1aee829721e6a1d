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
    if (part.surface === 'plug') return { ...part, vacuum: pressureForce(geometry, flow.stations) / p0 };
    if (part.surface === 'inner cowl') return { ...part, vacuum: -pressureForce(geometry, flow.cowl) / p0 };
    return part;
  });
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
