export {
  analogyReviewable,
  factReviewable,
  type Reviewable,
  reviewables,
  sentenceReviewable,
} from './reviewable.ts';
export { type SignOffStanding, standingsOf, standingWords, stateChanges } from './standing.ts';
