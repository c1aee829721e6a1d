/** What of a sentence, fact, analogy or script a reviewer signs. */

import type { ReviewedState } from '../../study/review/model.ts';
import type { CheckedAnalogy } from '../analogies/model.ts';
import type { CheckedSentence } from '../sentences/model.ts';

export interface Reviewable {
  readonly kind: 'sentence' | 'fact' | 'analogy' | 'script';
  readonly id: string;
  readonly state: ReviewedState;
}

/** Deciding numbers count as spoken: a change below the last spoken digit changes nothing that is said. */
export function sentenceReviewable({ id, say, holds, verdict, numbers }: CheckedSentence): Reviewable {
  const rests = numbers.map(({ expression, words }) => `${expression}: ${words}`);
  return { kind: 'sentence', id, state: { say, test: holds, verdict, rests } };
}

export function factReviewable({
  id,
  say,
  verdict,
  conditions,
  sources,
  problem,
}: CheckedSentence): Reviewable {
  const rests = [...conditions, ...sources, ...(problem === null ? [] : [problem.what])];
  return { kind: 'fact', id, state: { say, test: null, verdict, rests } };
}

export function analogyReviewable(analogy: CheckedAnalogy): Reviewable {
  const { id, say, verdict, legs, holdsFor, breaksWhere } = analogy;
  const rests = [
    ...legs.map((leg) => `${leg.say}: ${leg.claim ?? 'no test'}: ${leg.verdict}`),
    `holds for ${holdsFor}`,
    ...breaksWhere.map((where) => `breaks: ${where.say}`),
  ];
  return { kind: 'analogy', id, state: { say, test: null, verdict, rests } };
}

/** The script's name in `review.yaml`; no sentence can have it. */
export const SCRIPT_ID = 'script.md';

/** The words of a script line by line, its live numbers as they read. */
export function scriptReviewable(
  title: string,
  lines: readonly { readonly id: string; readonly text: string }[],
): Reviewable {
  const rests = lines.map(({ id, text }) => `${id}: ${text}`);
  const verdict = `${lines.length} ${lines.length === 1 ? 'line' : 'lines'}`;
  return { kind: 'script', id: SCRIPT_ID, state: { say: title, test: null, verdict, rests } };
}

/** All that can be signed, in the order of the study. */
export function reviewables(
  sentences: readonly CheckedSentence[],
  facts: readonly CheckedSentence[],
  analogies: readonly CheckedAnalogy[],
): readonly Reviewable[] {
  return [
    ...sentences.map(sentenceReviewable),
    ...facts.map(factReviewable),
    ...analogies.map(analogyReviewable),
  ];
}
