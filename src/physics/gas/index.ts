export {
  type BurningChamber,
  type BurningChamberOptions,
  expandBurntFromInjector,
} from './burningChamber.ts';
export { equilibrate } from './equilibrium.ts';
export { type EquilibriumState, equilibriumState } from './equilibriumState.ts';
export {
  type ExpansionOptions,
  expandBurnt,
  expandHeated,
  type HeatedOptions,
  HIGHEST_CHAMBER_PRESSURE,
  LOWEST_CHAMBER_PRESSURE,
  type NozzleChemistry,
  workFor,
} from './expand.ts';
export type { ChemistryKind, Expansion, FlowState, GasState } from './flow.ts';
export {
  type GibbsWork,
  type Held,
  newGibbsWork,
  STANDARD_STATE_PRESSURE,
  startCold,
} from './gibbsMinimum.ts';
export {
  compileMixture,
  HIGHEST_TEMPERATURE,
  LOWEST_TEMPERATURE,
  type Mixture,
  type SpeciesChoice,
} from './mixture.ts';
export { expandPerfect, type PerfectGas } from './perfectGas.ts';
export {
  blendReactants,
  burntReactants,
  massRatioForEquivalence,
  type ReactantPart,
  type Reactants,
} from './reactants.ts';
export type { PropellantRecord, SpeciesRecord, ThermoRange, TransportRecord } from './records.ts';
export { saturationPressure } from './saturation.ts';
export {
  compileTransport,
  estimatedTransport,
  type GasTransport,
  type TransportData,
  transportOf,
} from './transport.ts';
