/** What the engines of a study do for its vehicles. */

export { flightNumbers } from './flightNumbers.ts';
export { type Flown, fly } from './fly.ts';
export type * from './model.ts';
export { atMoment } from './moment.ts';
export type { Moved, SolutionOf } from './stages.ts';
export { firstEngine, vehicleAnswer } from './vehicleAnswer.ts';
export { LOSSES, vehicleLines } from './vehicleLines.ts';
