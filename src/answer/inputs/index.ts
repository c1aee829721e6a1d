/** What may be set: inputs of an engine, surroundings, throttle. */
export { settableConditions } from './conditions.ts';
export type * from './model.ts';
export { settableInputs } from './settableInputs.ts';
export { inputUnknown, withInputs, withVehicleInputs } from './withInputs.ts';
