/** Analogies, checked leg by leg. */
export { type AnalogyOptions, checkAnalogies } from './checkAnalogies.ts';
export type * from './model.ts';
