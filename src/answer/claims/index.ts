/** Claims of others, found in a text. */
export { passagesIn } from './captions.ts';
export { claimsIn } from './claimsIn.ts';
export type * from './model.ts';
