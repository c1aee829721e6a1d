export {
  analogyReviewable,
  factReviewable,
  type Reviewable,
  reviewables,
  SCRIPT_ID,
  scriptReviewable,
  sentenceReviewable,
} from './reviewable.ts';
export { type SignOffStanding, standingsOf, standingWords, stateChanges } from './standing.ts';
