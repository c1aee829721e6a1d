/** Heat from the gas to the walls of one engine, whatever cools them. */

import { ProblemError } from '../../numerics/problem.ts';
import {
  type GapError,
  gapError,
  type HeatSum,
  type HotGas,
  type HotSide,
  heatOf,
  hotSide,
  radiationTo,
  TENTH,
  wettedArea,
} from '../../physics/heat/index.ts';
import { layerGas, USUAL_WALL_TEMPERATURE } from '../../physics/nozzle/losses/index.ts';
import type { Contour, NozzleModel } from '../../physics/nozzle/model.ts';
import { hasWall } from '../hasWall.ts';
import { lowestOnWall } from '../losses.ts';
import type { WorkingGas } from '../workingGas.ts';
import { hotWalls } from './hotWalls.ts';

export interface HeatedSide {
  readonly side: HotSide;
  readonly bartz: HeatSum;
  readonly layer: HeatSum;
}

export interface EngineHeat {
  readonly sides: readonly HeatedSide[];
  /** [K] supposed of all walls */ readonly wallTemperature: number;
  /** All walls together, by Bartz and with radiation. */ readonly sum: HeatSum;
  /** The same by the integral layer. */ readonly byLayer: HeatSum;
  /** [m²] */ readonly wettedArea: number;
  /** Edges of the throat that touch a wall [m] */ readonly throatEdge: number;
  /** [m] */ readonly throatHydraulicDiameter: number;
  readonly gapError: GapError;
}

/** @throws ProblemError where the nozzle has no wall */
export function engineHeat(
  contour: Contour,
  nozzle: NozzleModel,
  gas: WorkingGas,
  massFlow: number,
): EngineHeat {
  if (!hasWall(nozzle.spec)) {
    throw new ProblemError({
      code: 'no-wall-to-heat',
      what: 'This nozzle has no wall of its own, so that nothing is heated.',
      mend: 'Choose a nozzle with a wall, such as a bell.',
      where: 'nozzle.kind',
    });
  }
  const { expansion } = nozzle;
  const layer = layerGas(expansion, lowestOnWall(nozzle), USUAL_WALL_TEMPERATURE, gas.transport);
  const composition = expansion.chamber.composition();
  const hot: HotGas = {
    layer,
    chamberPressure: expansion.chamber.pressure,
    massFlow,
    radiating: { water: composition['H2O'] ?? 0, dioxide: composition['CO2'] ?? 0 },
  };
  const { wallTemperature } = layer;
  const sides = hotWalls(contour, nozzle, layer).map((wall): HeatedSide => {
    const side = hotSide(wall, hot);
    return {
      side,
      bartz: heatOf(side, wallTemperature),
      layer: heatOf(side, wallTemperature, 'layer'),
    };
  });
  const throats = sides.map(({ side }) => side.points[side.throat]!);
  return {
    sides,
    wallTemperature,
    sum: together(sides.map(({ bartz }) => bartz)),
    byLayer: together(sides.map((each) => each.layer)),
    wettedArea: sides.reduce((area, { side }) => area + wettedArea(side.points), 0),
    throatEdge: throats.reduce((edge, { girth }) => edge + girth, 0),
    throatHydraulicDiameter: throats[0]!.diameter,
    gapError: gapErrorOf(contour),
  };
}

/** Greatest flux of all, and in `peakAt` the side on which it stands. */
function together(sums: readonly HeatSum[]): HeatSum {
  const most = sums.reduce((best, { peak }, i) => (peak > sums[best]!.peak ? i : best), 0);
  return {
    total: sums.reduce((all, { total }) => all + total, 0),
    radiation: sums.reduce((all, { radiation }) => all + radiation, 0),
    peak: sums[most]!.peak,
    peakAt: most,
  };
}

/** Of a throat round a pintle on its throat line, which is up to 3 % wider than the narrowest passage. */
function gapErrorOf({ plug, pintle, throatRadius }: Contour): GapError {
  const ring = plug ?? pintle;
  return ring === undefined
    ? gapError({ form: 'round', diameter: 2 * throatRadius }, TENTH)
    : gapError({ form: 'gap', gap: ring.throatGap }, TENTH);
}

/** Radiation where the flux is greatest of all [W/m²]. */
export function peakRadiation({ sides, sum, wallTemperature }: EngineHeat): number {
  const { side, bartz } = sides[sum.peakAt]!;
  return radiationTo(side.points[bartz.peakAt]!, wallTemperature);
}

/** [m] from the throat plane, of the greatest flux of all. */
export function peakPlace({ sides, sum }: EngineHeat): { readonly wall: string; readonly axial: number } {
  const { side, bartz } = sides[sum.peakAt]!;
  return { wall: side.name, axial: side.points[bartz.peakAt]!.axial };
}
