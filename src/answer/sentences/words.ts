/** Verdicts in words for people, the same on every face. */

import type { CheckedSentence, Verdict } from './model.ts';

/** What the share means, e.g. `holds in 97 % of what is not known`. */
export { shareText } from './judge.ts';

const FAILS: ReadonlySet<Verdict> = new Set(['don’t say', 'can’t tell']);

/** A sentence, fact or analogy that is meant to be said, but should not be. */
export function failsAsSaid({
  said,
  verdict,
  problem,
}: Pick<CheckedSentence, 'said' | 'verdict' | 'problem'>): boolean {
  return said && (problem !== null || FAILS.has(verdict));
}

/** What to say, or what is true instead, or why not: the one line beside a sentence. */
export function besideWords({ wording, instead, why, problem }: CheckedSentence): string {
  if (problem !== null) return `${problem.what} ${problem.mend}`;
  if (instead !== null) return `Instead: ${instead}`;
  return wording ?? why;
}

/** The verdict as people read it: a test that cannot be read leaves nothing undecided between models, so it has its own words. */
export function verdictLabel({
  verdict,
  problem,
  ...rest
}: Pick<CheckedSentence, 'verdict' | 'problem'>): string {
  if (problem === null || verdict !== 'can’t tell') return verdict;
  return 'legs' in rest ? 'cannot be checked' : UNREADABLE;
}

const UNREADABLE = 'test cannot be read';

/** Reasons in the words that the test does not look at; only beside what may be said, for the rest is not to be said anyway. */
export function untestedReasons({
  verdict,
  saidReasons,
}: Pick<CheckedSentence, 'verdict' | 'saidReasons'>): readonly string[] {
  if (verdict !== 'safe to say' && verdict !== 'say with care') return [];
  return saidReasons.filter(({ tested }) => !tested).map(({ words }) => words);
}

const ORDER: readonly string[] = [
  'safe to say',
  'say with care',
  'don’t say',
  'can’t tell',
  UNREADABLE,
  'cannot be checked',
  'reported',
  'not checked',
];

/** `2 safe to say, 1 say with care` */
export function countWords(sentences: readonly Pick<CheckedSentence, 'verdict' | 'problem'>[]): string {
  return ORDER.flatMap((verdict) => {
    const count = sentences.filter((sentence) => verdictLabel(sentence) === verdict).length;
    return count === 0 ? [] : [`${count} ${verdict}`];
  }).join(', ');
}
