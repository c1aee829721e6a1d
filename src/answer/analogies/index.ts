/** Analogies, checked leg by leg. */
export { changedAnalogies, type JudgedAnalogy } from './changedAnalogies.ts';
export { type AnalogyOptions, checkAnalogies } from './checkAnalogies.ts';
export type * from './model.ts';
