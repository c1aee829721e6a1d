export { balanceClosed, closedMargin } from './closedCycle.ts';
export { type Battery, balanceElectric, batteryMass } from './electricPump.ts';
export { engineMass, MASS_RANGE, type MassBand, type MassRelation } from './engineMass.ts';
export { type Exhaust, exhaustOf, withDump } from './exhaust.ts';
export { type PressureDrops, pressureBehindPump, pumpPower, type Stream } from './feed.ts';
export {
  type Excess,
  type FedPropellants,
  generatorGas,
  heatedFuelGas,
  heatedFuelTemperature,
} from './generatorGas.ts';
export type {
  Balance,
  ClosedCycle,
  ElectricCycle,
  Feed,
  OpenCycle,
  Pumped,
  Reach,
  Turbine,
} from './model.ts';
export { balanceOpen, workLeft } from './openCycle.ts';
export { type Limit, pumpPressureLimit, reachOf } from './reach.ts';
export {
  bottleVolume,
  type Pressurant,
  pressurantMass,
  type TankMaterial,
  tankMass,
  ULLAGE,
} from './tanks.ts';
export { perfectTurbineGas, type TurbineGas, turbineGasOf } from './turbineGas.ts';
