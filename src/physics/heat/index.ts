export {
  adiabaticWallTemperature,
  BARTZ_SCATTER,
  bartzSigma,
  bartzUncorrected,
  type StagnationGas,
} from './bartz.ts';
export { depthForDrop } from './channelDepth.ts';
export { type ChannelHere, type ChannelShape, channelAt, finFactor } from './channels.ts';
export {
  CORRELATION_NAMES,
  CORRELATIONS,
  type Correlation,
  type CorrelationPlace,
  frictionFactor,
  nusseltOf,
  outsideRange,
} from './coolantCorrelations.ts';
export { type CoolantFluid, type CoolantState, coolantFluid } from './coolantFluid.ts';
export {
  type CoolantFlow,
  type CoolantMarch,
  coolantMarch,
  type Jacket,
  limitOf,
  type MarchPoint,
} from './coolantMarch.ts';
export type {
  CoolantLimits,
  CoolantRecord,
  CoolantTable,
  TemperatureLimit,
  WallMaterialRecord,
} from './coolantRecords.ts';
export { FILM_EFFICIENCY, type Film, underFilm } from './filmCooling.ts';
export { gasEmissivity, gasRadiation, type RadiatingGas } from './gasRadiation.ts';
export {
  type GasModel,
  gasCoefficient,
  type HeatSum,
  type HotGas,
  type HotPoint,
  type HotSide,
  type HotWall,
  heatOf,
  hotSide,
  radiationTo,
  wettedArea,
} from './gasSide.ts';
export { radiatingTemperature } from './radiatingSkirt.ts';
export { hydraulicDiameter, type StreamForm } from './streamThickness.ts';
export { type GapError, gapError, TENTH } from './throatGap.ts';
export { arriving, type WallMetal, wallBalance } from './wallBalance.ts';
export { beyondRows, wallConductivity } from './wallMaterial.ts';
