import type { Expansion, FlowState } from '../../gas/flow.ts';
import type { Contour } from '../model.ts';
import type { WallState } from '../wallStates.ts';
import type { WallStation } from '../wallStation.ts';

/** Area ratios closer to 1 than this are the throat itself. */
const AT_THROAT = 1e-6;

/**
 * The gas along the outer wall of an expansion–deflection nozzle: behind the throat the wall's own state from the flow
 * field, ahead of it the mean over the ring between wall and pintle stem, one-dimensional. No mean is computed behind the
 * throat, where the wake fills the middle: the wall's own pressure stands for it.
 *
 * @param stations from throat to lip, sizes over throat radius
 * @throws ProblemError where the gas model does not reach a state
 */
export function deflectionWallStates(
  contour: Contour,
  expansion: Expansion,
  stations: readonly WallStation[],
): WallState[] {
  const stem = contour.bodies?.find(({ name }) => name === 'pintle')?.outline[0]?.radius ?? 0;
  const ahead = contour.wall.filter(({ part }) => part !== 'nozzle');
  const narrowest = ahead.reduce((least, point) => (point.radius < least.radius ? point : least));
  const ring = (radius: number): number => (radius ** 2 - stem ** 2) / contour.throatRadius ** 2;
  // Behind its narrowest place the wall turns outwards with the flow; the pintle's flare closes the passage to the throat.
  const areaRatioAt = (axial: number, radius: number): number =>
    axial <= narrowest.axial ? ring(radius) : 1 + (ring(narrowest.radius) - 1) * (axial / narrowest.axial);
  return contour.wall.map(({ axial, radius, part }) => {
    if (part === 'nozzle') {
      return stateOf(expansion.atPressure(pressureAt(stations, axial / contour.throatRadius)), axial, radius);
    }
    const areaRatio = areaRatioAt(axial, radius);
    const state =
      areaRatio - 1 < AT_THROAT || axial > -contour.throatRadius * AT_THROAT
        ? expansion.throat
        : expansion.atAreaRatio(areaRatio, 'subsonic');
    return stateOf(state, axial, radius);
  });
}

function stateOf(
  { pressure, mach, temperature, velocity }: FlowState,
  axial: number,
  radius: number,
): WallState {
  return { axial, radius, pressure, mach, temperature, velocity, meanPressure: pressure };
}

/** ln p linear between stations. */
function pressureAt(stations: readonly WallStation[], axial: number): number {
  const next = stations.findIndex((station) => station.axial >= axial);
  if (next === 0) return stations[0]!.pressure;
  if (next < 0) return stations[stations.length - 1]!.pressure;
  const [from, to] = [stations[next - 1]!, stations[next]!];
  return from.pressure * (to.pressure / from.pressure) ** ((axial - from.axial) / (to.axial - from.axial));
}
