export { type BoundaryLayer, boundaryLayer, type LayerPoint, type LayerStation } from './boundaryLayer.ts';
export {
  type Budget,
  type Efficiency,
  type LossItem,
  type LossSum,
  lossBudget,
  type NozzleLossItem,
} from './budget.ts';
export { type BandedShare, kineticsLoss } from './kinetics.ts';
export { type LayerEdge, type LayerGas, layerGas } from './layerGas.ts';
export {
  COOLANT_GAIN,
  ENERGY_RELEASE_BAND,
  LAYER_SCATTER,
  type LossBand,
  USUAL_EFFICIENCY,
  USUAL_WALL_TEMPERATURE,
} from './lossBands.ts';
export { aluminaDiameter, type LagStation, particleLagLoss } from './particleLag.ts';
export { frictionCompressible, frictionIncompressible } from './skinFriction.ts';
