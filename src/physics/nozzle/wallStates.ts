import type { Expansion, FlowState } from '../gas/flow.ts';
import type { Contour, WallStation } from './model.ts';

/** Mean state of the gas over the cross-section at one place of the wall, and the pressure that the wall itself feels. */
export interface WallState {
  /** [m] from the throat plane */ readonly axial: number;
  /** [m] */ readonly radius: number;
  /** [Pa] */ readonly pressure: number;
  /** [–]; null where the gas has no sound speed */ readonly mach: number | null;
  /** [K] */ readonly temperature: number;
  /** [m/s] */ readonly velocity: number;
  /** [Pa] on the wall, from the flow field; the mean where there is none */ readonly wallPressure: number;
}

/** Area ratios closer to 1 than this are the throat itself. */
const AT_THROAT = 1e-9;

/**
 * One-dimensional mean state at every point of the contour, by the area ratio (r/R_t)², and the pressure on the wall.
 *
 * Subsonic up to the throat, supersonic after it, whatever the ambient pressure: full flow. The wall's own pressure comes
 * from `stations` behind the throat. Ahead of it no field is computed: along the throat's arc ln(p_wall/p_mean) goes
 * linearly from 0 to its value in the throat; further up the wall feels the mean.
 *
 * @throws ProblemError where the gas model does not reach the area ratio
 * Source: L. H. Back, P. F. Massier, H. L. Gier, AIAA J. 3(9), 1965 (that the wall's pressure is below the mean from the
 * throat's arc on, by up to some 15 % in the throat).
 */
export function wallStates(
  contour: Contour,
  expansion: Expansion,
  stations: readonly WallStation[] | null = null,
): WallState[] {
  let last: { areaRatio: number; state: FlowState } | null = null;
  const arcStart = contour.wall.find(({ part }) => part === 'throat')?.axial ?? 0;
  return contour.wall.map(({ axial, radius }) => {
    const areaRatio = (radius / contour.throatRadius) ** 2;
    if (last === null || last.areaRatio !== areaRatio) {
      last = { areaRatio, state: stateAt(expansion, areaRatio, axial) };
    }
    const { pressure, mach, temperature, velocity } = last.state;
    const wallPressure =
      stations === null
        ? pressure
        : axial < 0
          ? pressure *
            (stations[0]!.pressure / expansion.throat.pressure) **
              Math.max(1 - axial / Math.min(arcStart, axial), 0)
          : pressureAt(stations, axial / contour.throatRadius);
    return { axial, radius, pressure, mach, temperature, velocity, wallPressure };
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

function stateAt(expansion: Expansion, areaRatio: number, axial: number): FlowState {
  if (areaRatio - 1 < AT_THROAT) return expansion.throat;
  return expansion.atAreaRatio(areaRatio, axial < 0 ? 'subsonic' : 'supersonic');
}
