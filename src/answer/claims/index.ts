/** Claims of others, found in a text. */
export { claimsIn } from './claimsIn.ts';
export type * from './model.ts';
