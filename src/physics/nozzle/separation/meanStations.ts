import type { Expansion, FlowState } from '../../gas/flow.ts';
import type { WallStation } from '../wallStation.ts';

const STATIONS = 32;

/**
 * Stations of one-dimensional flow, for a wall on which no field can be had or a nozzle without a wall of its own:
 * from the throat to the exit in even steps of ln p, the mean over each section in place of the wall's own state.
 *
 * @param axialAt axial distance at a radius, both over the throat radius [–]
 */
export function meanStations(
  expansion: Expansion,
  exit: FlowState,
  axialAt: (radius: number) => number,
): readonly WallStation[] {
  const { throat } = expansion;
  const span = Math.log(exit.pressure / throat.pressure);
  return Array.from({ length: STATIONS }, (_, i) => {
    const state =
      i === 0
        ? throat
        : i === STATIONS - 1
          ? exit
          : expansion.atPressure(throat.pressure * Math.exp((span * i) / (STATIONS - 1)));
    const radius = i === 0 ? 1 : Math.sqrt(state.areaRatio);
    return {
      axial: i === 0 ? 0 : axialAt(radius),
      radius,
      pressure: state.pressure,
      mach: state.mach,
      temperature: state.temperature,
    };
  });
}
