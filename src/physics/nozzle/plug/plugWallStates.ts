import type { Expansion } from '../../gas/flow.ts';
import type { Contour, PlugContour } from '../model.ts';
import type { WallState } from '../wallStates.ts';
import type { WallStation } from '../wallStation.ts';

/** Area ratios closer to 1 than this are the throat itself. */
const AT_THROAT = 1e-9;

/**
 * The gas along the plug's side, from the injector face to the cut: one-dimensional by the area of the ring ahead of the
 * throat line, from the field behind it.
 *
 * @param stations of the plug's wall from the throat line to the cut
 * @throws ProblemError where the gas model does not reach the area ratio
 */
export function plugWallStates(
  contour: Contour & { readonly plug: PlugContour },
  expansion: Expansion,
  stations: readonly WallStation[],
): WallState[] {
  const { wall } = contour.plug;
  const areas = plugDuctAreas(contour);
  const ducts = areas.length;
  return wall.map(({ axial, radius }, i) => {
    const state =
      i < ducts
        ? stateInDuct(expansion, areas[i]! / areas[ducts - 1]!)
        : expansion.atPressure(stations[i - ducts]!.pressure);
    const { pressure, mach, temperature, velocity } = state;
    return { axial, radius, pressure, mach, temperature, velocity, meanPressure: pressure };
  });
}

function stateInDuct(expansion: Expansion, areaRatio: number) {
  if (areaRatio - 1 < AT_THROAT) return expansion.throat;
  return expansion.atAreaRatio(areaRatio, 'subsonic');
}

/** Area across the ring of the chamber at each of its points, injector face to throat [m²; linear: per width, m]. */
export function plugDuctAreas(contour: Contour & { readonly plug: PlugContour }): readonly number[] {
  const count = contour.wall.filter(({ part }) => part !== 'nozzle').length;
  return Array.from({ length: count }, (_, i) => areaAt(contour, i));
}

/** Area of the duct at each of its `ducts` points over that of the throat, its last one [–]. */
export function ductAreaRatios(
  contour: Contour & { readonly plug: PlugContour },
  ducts: number,
): readonly number[] {
  const throat = areaAt(contour, ducts - 1);
  return Array.from({ length: ducts }, (_, i) => areaAt(contour, i) / throat);
}

/** Area across the duct between the points of number i on its two sides [m²; linear: per width, m]. */
function areaAt({ wall, plug }: Contour & { readonly plug: PlugContour }, i: number): number {
  const [a, b] = [wall[i]!, plug.wall[i]!];
  const across = Math.hypot(a.axial - b.axial, a.radius - b.radius);
  return plug.form === 'linear' ? across : across * (a.radius + b.radius);
}
