/** Plain expressions told, each with its span over all that is not known. */
export type * from './model.ts';
export { type AskedNumber, type AskedNumbers, asksOfNumbers, tellNumbers } from './tellNumbers.ts';
