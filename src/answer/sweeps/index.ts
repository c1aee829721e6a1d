/** Curves and maps of any quantity against any input. */
export type * from './model.ts';
