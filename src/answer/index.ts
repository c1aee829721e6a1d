export {
  type AnalogyOptions,
  changedAnalogies,
  checkAnalogies,
  type JudgedAnalogy,
} from './analogies/index.ts';
export type * from './analogies/model.ts';
export { askProblem, type Needs, needsOf } from './asked/askProblem.ts';
export type * from './asked/model.ts';
export { nearestQuantities, quantityNames, resolveQuantity } from './asked/resolveQuantity.ts';
export { tell } from './asked/tell.ts';
export { tellAir } from './asked/tellAir.ts';
export { type CatalogueEntry, catalogue, findQuantity, quantity, quantityNameAt } from './catalogue.ts';
export { CAUTION, hazardsOf } from './caution.ts';
export { claimsIn } from './claims/index.ts';
export type * from './claims/model.ts';
export { compareEngines } from './compare.ts';
export {
  altitudeCurve,
  type Condition,
  conditionAt,
  conditionAtAltitude,
  conditionInVacuum,
  rowAt,
  STANDARD_ALTITUDES,
} from './conditions.ts';
export { show } from './display.ts';
export { engineAnswer } from './engineAnswer.ts';
export { gatherMaterials, type Materials } from './materials.ts';
export type * from './model.ts';
export { plumeAt } from './plume.ts';
export type * from './plumeModel.ts';
export {
  besideWords,
  type ChangedVerdict,
  type CheckAnswer,
  type CheckedComparison,
  type CheckOptions,
  changedVerdicts,
  checkAnswer,
  checkFacts,
  checkSentences,
  comparePair,
  countWords,
  failsAsSaid,
  type Judged,
  shareText,
  untestedReasons,
  verdictLabel,
} from './sentences/index.ts';
export type * from './sentences/model.ts';
export type { DataShelf } from './shelf.ts';
export type { EngineSolution } from './solution.ts';
export { type SolvedStudy, type SolveOptions, solveStudy, solveStudyLive } from './solve.ts';
export { solveEngine } from './solveEngine.ts';
