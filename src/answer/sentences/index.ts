/** Sentences checked: verdict, share, wording, conditions, flip points. */
export { type ChangedVerdict, changedVerdicts, type Judged } from './changedVerdicts.ts';
export { type CheckAnswer, checkAnswer } from './checkAnswer.ts';
export { checkFacts } from './checkFacts.ts';
export { type CheckOptions, checkSentences } from './checkSentences.ts';
export { type CheckedComparison, comparePair } from './comparePair.ts';
export {
  type AskedDifference,
  type ComparedPair,
  type DifferenceBand,
  differenceBand,
  differenceBands,
} from './differenceBand.ts';
export { flipWords } from './flipWords.ts';
export type * from './model.ts';
export {
  besideWords,
  countWords,
  failsAsSaid,
  shareText,
  untestedReasons,
  verdictLabel,
} from './words.ts';
