/** What the engines of a study do for its vehicles. */

export { flightNumbers } from './flightNumbers.ts';
export { type Flown, fly, type Moved, type SolutionOf } from './fly.ts';
export type * from './model.ts';
export { atMoment } from './moment.ts';
export { firstEngine, vehicleAnswers } from './vehicleAnswer.ts';
export { LOSSES, vehicleLines } from './vehicleLines.ts';
