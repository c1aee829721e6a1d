/** What an input would have to be for a comparison to hold. */
export { findNeed, type NeedOptions } from './findNeed.ts';
export type * from './model.ts';
export { needWords } from './needWords.ts';
export { needRequestOf } from './requested.ts';
