/** Sign-offs → the text of `review.yaml`, the same for the same sign-offs. */

import { stringify } from 'yaml';
import type { SignOff } from './model.ts';
import { REVIEW_FORM } from './readReview.ts';

const HEAD = `# Written by plumeline review: who looked at which sentence, when, and what stood there then.
# A later change of what was reviewed voids the sign-off; plumeline check and the fact sheet tell so.
`;

export function reviewText(signOffs: readonly SignOff[]): string {
  const reviews = signOffs.map(({ id, by, date, hash, reviewed }) => ({
    id,
    by,
    date,
    hash,
    say: reviewed.say,
    test: reviewed.test,
    verdict: reviewed.verdict,
    rests: reviewed.rests,
  }));
  const options = { lineWidth: 0, defaultStringType: 'QUOTE_DOUBLE', defaultKeyType: 'PLAIN' } as const;
  return HEAD + stringify({ 'plumeline-review': REVIEW_FORM, reviews }, options);
}

/** Newer sign-offs take the place of older ones by the same person of the same sentence. */
export function withSignOffs(earlier: readonly SignOff[], added: readonly SignOff[]): readonly SignOff[] {
  const replaced = ({ id, by }: SignOff): boolean =>
    added.some((signOff) => signOff.id === id && signOff.by === by);
  return [...earlier.filter((signOff) => !replaced(signOff)), ...added];
}
