/** First estimates of engines whose inputs move. They go to the screen, marked as such, and nowhere else. */

export { basisOf } from './basis.ts';
export { touchedEngines, withTextAt } from './changedEngines.ts';
export { estimateEngine } from './estimateEngine.ts';
export { fieldUpTo } from './fieldUpTo.ts';
export type {
  AnsweredEngine,
  EngineBasis,
  EstimatedEngine,
  EstimatedRow,
  Likeness,
  Recut,
} from './model.ts';
export { isRecut, recutOf } from './recut.ts';
export { areAlike, isUnseen } from './unseen.ts';
