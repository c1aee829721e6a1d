/** The gas along the wall of an engine; of a plug engine, along its plug. */

import {
  type Contour,
  deflectionWallStates,
  type NozzleModel,
  plugWallStates,
  type WallStation,
  wallStates,
} from '../physics/nozzle/index.ts';
import type { WallPoint } from './model.ts';

/** @throws ProblemError where the gas does not reach so far */
export function wallOf(contour: Contour, nozzle: NozzleModel): readonly WallPoint[] {
  return wallIn(contour, nozzle, nozzle.wallStations());
}

/** The same with the gas of one mode of the nozzle. */
export function wallIn(
  contour: Contour,
  { spec, expansion, dischargeCoefficient }: NozzleModel,
  stations: readonly WallStation[] | null,
): readonly WallPoint[] {
  const { plug } = contour;
  if (spec.kind === 'expansionDeflection' && stations !== null) {
    return deflectionWallStates(contour, expansion, stations);
  }
  return plug !== undefined && stations !== null
    ? plugWallStates({ ...contour, plug }, expansion, stations)
    : wallStates(contour, expansion, stations, dischargeCoefficient);
}
