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

/** `2 safe to say, 1 say with care` */
export function countWords(sentences: readonly Pick<CheckedSentence, 'verdict'>[]): string {
  const order: readonly Verdict[] = [
    'safe to say',
    'say with care',
    'don’t say',
    'can’t tell',
    'reported',
    'not checked',
  ];
  return order
    .flatMap((verdict) => {
      const count = sentences.filter((sentence) => sentence.verdict === verdict).length;
      return count === 0 ? [] : [`${count} ${verdict}`];
    })
    .join(', ');
}
