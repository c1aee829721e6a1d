/** The whole flow of a study's engines. */
export { type AlongLine, type AlongPoint, fieldAlong } from './along.ts';
export {
  FlowBroke,
  type FlowSolver,
  flowFields,
  flowSolver,
  type GpuFlowSolver,
  gpuFlowSolver,
  levelsTo,
} from './flowFields.ts';
export {
  type AgainstModel,
  FINENESSES,
  type Fineness,
  FLOW_BITS,
  type FlowBits,
  type FlowField,
  type FlowMoment,
  SHOWN,
  type Shown,
} from './model.ts';
export { CLIMB, type FlowPlace, flowPlaceAt } from './places.ts';
export { type FlowEvent, type TimedChoices, timedFields } from './timedFlow.ts';
