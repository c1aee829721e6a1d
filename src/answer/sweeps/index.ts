/** Curves and maps of any quantity against any input. */
export { heldOf } from './held.ts';
export type * from './model.ts';
export { sweep } from './sweep.ts';
