/** Alumina drops that lag behind the gas of an engine. */

import {
  aluminaDiameter,
  type LagStation,
  type LayerGas,
  type NozzleLossItem,
  particleLagLoss,
} from '../physics/nozzle/losses/index.ts';
import type { Contour, NozzleModel } from '../physics/nozzle/model.ts';
import { ERROR_NAMES } from './scatter/model.ts';
import { wallSides } from './wallLayer.ts';

/** [kg/mol] of Al2O3 */
const ALUMINA = 0.1019613;
/** Drops of one motor spread about the mean diameter; common practice, no source. */
const DIAMETER_SPREAD = { low: 0.7, high: 1.3 };

/** @returns null where the gas at the throat holds no alumina */
export function dropLag(
  contour: Contour,
  nozzle: NozzleModel,
  gas: LayerGas,
  ideal: number,
): NozzleLossItem | null {
  const { throat } = nozzle.expansion;
  const moles = Object.entries(throat.composition())
    .filter(([name]) => name.startsWith('Al2O3('))
    .reduce((sum, [, share]) => sum + share, 0);
  const massShare = (moles * ALUMINA) / throat.molarMass;
  if (massShare < 1e-6) return null;
  const stations = lagStations(contour, nozzle, gas, massShare);
  const diameter = aluminaDiameter(2 * contour.throatRadius);
  const loss = (times: number): number => particleLagLoss(stations, massShare, times * diameter);
  return {
    name: 'alumina drops that lag',
    specificImpulse: loss(1) * ideal,
    band: { low: loss(DIAMETER_SPREAD.low), high: loss(DIAMETER_SPREAD.high) },
    source:
      'drag and heat of single drops along the flow, mean diameter by R. W. Hermsen, J. Spacecraft 18(6), 1981, ±30 % (from memory)',
    error: ERROR_NAMES.drops,
  };
}

/** Along the wall, from the injector; a plug's along the plug. */
function lagStations(
  contour: Contour,
  nozzle: NozzleModel,
  gas: LayerGas,
  massShare: number,
): readonly LagStation[] {
  let path = 0;
  const { stations } = wallSides(contour, nozzle, gas).at(-1)!;
  return stations.map((point, i) => {
    const before = stations[Math.max(i - 1, 0)]!;
    path += Math.hypot(point.axial - before.axial, point.radius - before.radius);
    const edge = gas.edgeAt(point.pressure);
    return { ...edge, path, density: edge.density * (1 - massShare) };
  });
}
