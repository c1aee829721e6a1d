/** Heat and cooling as the answer prints them. */

import { CORRELATION_NAMES, gasCoefficient, radiationTo } from '../../physics/heat/index.ts';
import type { CooledSide } from './engineCooling.ts';
import { type EngineHeat, peakPlace } from './engineHeat.ts';
import type { LiveCooling } from './liveCooling.ts';
import type { CooledWallAnswer, CoolingAnswer, HeatAnswer, HeatPoint } from './model.ts';
import { rangeNotes } from './rangeNotes.ts';

export function heatAnswer(heat: EngineHeat): HeatAnswer {
  const { sum, byLayer, wallTemperature } = heat;
  const { wall, axial } = peakPlace(heat);
  return {
    wallTemperature,
    total: sum.total,
    layerTotal: byLayer.total,
    radiationShare: sum.radiation / sum.total,
    peakFlux: sum.peak,
    layerPeakFlux: byLayer.peak,
    peakAt: axial,
    peakOn: wall,
    wettedArea: heat.wettedArea,
    throatEdge: heat.throatEdge,
    throatHydraulicDiameter: heat.throatHydraulicDiameter,
    gapError: heat.gapError,
    walls: heat.sides.map(({ side }) => ({ name: side.name, points: heatPoints(heat, side.name) })),
  };
}

/** Along one wall, injector to end. */
export function heatPoints({ sides, wallTemperature }: EngineHeat, wall: string): readonly HeatPoint[] {
  const { side } = sides.find((each) => each.side.name === wall)!;
  return side.points.map((point) => {
    const radiationFlux = radiationTo(point, wallTemperature);
    const excess = point.recovery - wallTemperature;
    return {
      axial: point.axial,
      radius: point.radius,
      flux: gasCoefficient(point, wallTemperature) * excess + radiationFlux,
      layerFlux: point.layerCoefficient * excess + radiationFlux,
      radiationFlux,
      adiabaticTemperature: point.recovery,
    };
  });
}

export function coolingAnswer(live: LiveCooling): CoolingAnswer {
  const { cooling, notes } = live;
  const { setup, sides, tightest, hottest, skirtTemperature } = cooling;
  const { supply, material } = setup;
  const [thrust, pressure] = [live.thrust(), live.pressure()];
  return {
    coolant: supply.fluid.record.name,
    wall: material.name,
    correlation: CORRELATION_NAMES[setup.correlation],
    capacityBy: sides[0]!.march.capacityBy,
    margin: cooling.margin,
    heatMargin: cooling.heatMargin,
    wallMargin: cooling.wallMargin,
    tightestAt: tightest.point.axial,
    tightestOn: tightest.side.name,
    heat: cooling.heat,
    capacity: cooling.capacity,
    flow: supply.massFlow,
    inletTemperature: supply.temperature,
    inletPressure: setup.inletPressure,
    outletTemperature: Math.max(...sides.map(({ march }) => march.outlet.temperature)),
    pressureDrop: Math.max(...sides.map(({ march }) => march.pressureDrop)),
    channelDepth: sides[0]!.depth,
    channelWidth: setup.width,
    hottestWall: hottest.point.wallHot,
    hottestAt: hottest.point.axial,
    wallLimit: material.limit.temperature,
    ...(skirtTemperature !== null && {
      skirtTemperature,
      skirtLimit: setup.skirtMaterial.limit.temperature,
    }),
    scaling: {
      heatMarginWithThrust: thrust.ok ? thrust.value.heatMargin : null,
      wallMarginWithThrust: thrust.ok ? thrust.value.wallMargin : null,
      heatMarginWithPressure: pressure.ok ? pressure.value.heatMargin : null,
      wallMarginWithPressure: pressure.ok ? pressure.value.wallMargin : null,
    },
    walls: sides.map(cooledWall),
    notes: [
      ...notes,
      ...rangeNotes(cooling),
      ...sides.flatMap(({ name, march }) =>
        march.spentAt === null
          ? []
          : [`Along the ${name} the coolant reaches its limit on the way: ${march.capacityBy}.`],
      ),
    ],
  };
}

export function cooledWall({ name, depth, march, skirt }: CooledSide): CooledWallAnswer {
  return {
    name,
    channelDepth: depth,
    points: march.points.map((point) => ({
      axial: point.axial,
      radius: point.radius,
      adiabaticTemperature: point.recovery,
      wallHot: point.wallHot,
      wallCold: point.wallCold,
      coolantTemperature: point.coolant,
      coolantPressure: point.pressure,
      coolantVelocity: point.velocity,
      flux: point.heatFlux,
      localMargin: point.margin,
    })),
    skirt: skirt.map(({ axial, radius, temperature }) => ({ axial, radius, wallHot: temperature })),
  };
}
