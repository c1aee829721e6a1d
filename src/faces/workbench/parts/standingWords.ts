import type { Standing } from '../state/pair.ts';

/** What is on screen of an engine while its inputs move, in words. */
export const standingWords: Readonly<Record<Standing, string>> = {
  estimate: 'first estimate, catching up …',
  'estimate in the shape before': 'first estimate; its shape follows …',
  before: 'as it was; the answer follows …',
};

/** Before a number that is estimated. */
export const ABOUT = '≈\u00a0';
/** Before a number of an engine that is about to be another, where nothing can be estimated. */
export const BEFORE = 'before: ';
