import type { Expansion, FlowState } from '../gas/flow.ts';
import { chamberWallPressures } from './chamberFlow.ts';
import type { Contour, WallStation } from './model.ts';

/** The gas at one place of the wall, at the wall itself, and the mean pressure over the cross-section there. */
export interface WallState {
  /** [m] from the throat plane */ readonly axial: number;
  /** [m] */ readonly radius: number;
  /** [Pa] */ readonly pressure: number;
  /** [–]; null where the gas has no sound speed */ readonly mach: number | null;
  /** [K] */ readonly temperature: number;
  /** [m/s] */ readonly velocity: number;
  /** [Pa] one-dimensional */ readonly meanPressure: number;
}

/** Area ratios closer to 1 than this are the throat itself. */
const AT_THROAT = 1e-9;

/**
 * The gas at the wall at every point of the contour, whatever the ambient pressure: full flow.
 *
 * Behind the throat from the field's `stations`, ahead of it as chamberFlow.ts says. Where there is no field the
 * one-dimensional mean stands in: subsonic up to the throat, supersonic after it, by the area ratio (r/R_t)².
 * No boundary layer: temperature and speed are those at its edge.
 *
 * @param discharge mass flow over one-dimensional mass flow [–]
 * @throws ProblemError where the gas model does not reach the area ratio
 */
export function wallStates(
  contour: Contour,
  expansion: Expansion,
  stations: readonly WallStation[] | null = null,
  discharge = 1,
): WallState[] {
  const means = meanStates(contour, expansion);
  if (stations === null) {
    return contour.wall.map((point, i) => wallState(point, means[i]!, means[i]!.pressure));
  }
  const ahead = chamberWallPressures(contour, expansion, discharge);
  return contour.wall.map((point, i) => {
    const pressure = ahead[i] ?? pressureAt(stations, point.axial / contour.throatRadius);
    return wallState(point, expansion.atPressure(pressure), means[i]!.pressure);
  });
}

function wallState(
  { axial, radius }: { readonly axial: number; readonly radius: number },
  { pressure, mach, temperature, velocity }: FlowState,
  meanPressure: number,
): WallState {
  return { axial, radius, pressure, mach, temperature, velocity, meanPressure };
}

function meanStates(contour: Contour, expansion: Expansion): readonly FlowState[] {
  let last: { areaRatio: number; state: FlowState } | null = null;
  return contour.wall.map(({ axial, radius }) => {
    const areaRatio = (radius / contour.throatRadius) ** 2;
    if (last === null || last.areaRatio !== areaRatio) {
      last = { areaRatio, state: meanAt(expansion, areaRatio, axial) };
    }
    return last.state;
  });
}

/** ln p linear between stations. */
function pressureAt(stations: readonly WallStation[], axial: number): number {
  const next = stations.findIndex((station) => station.axial >= axial);
  if (next === 0) return stations[0]!.pressure;
  if (next < 0) return stations[stations.length - 1]!.pressure;
  const from = stations[next - 1]!;
  const to = stations[next]!;
  return from.pressure * (to.pressure / from.pressure) ** ((axial - from.axial) / (to.axial - from.axial));
}

function meanAt(expansion: Expansion, areaRatio: number, axial: number): FlowState {
  if (areaRatio - 1 < AT_THROAT) return expansion.throat;
  return expansion.atAreaRatio(areaRatio, axial < 0 ? 'subsonic' : 'supersonic');
}
