/** Curves and maps of any quantity against any input. */
export { heldOf } from './held.ts';
export { sweepMap } from './map.ts';
export type * from './model.ts';
export { sweep } from './sweep.ts';
