/** Curves and maps of any quantity against any input. */
export { mapFindings, mapHeadline, nameOf, shortNames, sweepFindings, sweepHeadline } from './findings.ts';
export { heldOf } from './held.ts';
export { sweepMap } from './map.ts';
export type * from './model.ts';
export { mapRequestOf, sweepRequestOf, USUAL_POINTS } from './requested.ts';
export { sweep } from './sweep.ts';
