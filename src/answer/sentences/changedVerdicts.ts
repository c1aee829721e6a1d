/** Which verdicts an edit changed. */

import type { CheckedSentence, Verdict } from './model.ts';

/** As little of a checked sentence as a comparison needs. */
export type Judged = Pick<CheckedSentence, 'id' | 'say' | 'verdict' | 'share'>;

export interface ChangedVerdict {
  readonly id: string;
  readonly say: string;
  /** Null: the sentence is new. */ readonly before: Verdict | null;
  /** Null: it is gone. */ readonly after: Verdict | null;
  readonly shareBefore: number | null;
  readonly shareAfter: number | null;
  /** e.g. `pad-gain: safe to say → say with care` */ readonly words: string;
}

/** In the order of `after`, those that are gone last. */
export function changedVerdicts(
  before: readonly Judged[],
  after: readonly Judged[],
): readonly ChangedVerdict[] {
  const old = new Map(before.map((sentence) => [sentence.id, sentence]));
  const now = new Set(after.map(({ id }) => id));
  const changed = after.flatMap((sentence) => {
    const was = old.get(sentence.id);
    return was?.verdict === sentence.verdict ? [] : [change(was ?? null, sentence)];
  });
  return [...changed, ...before.filter(({ id }) => !now.has(id)).map((was) => change(was, null))];
}

function change(before: Judged | null, after: Judged | null): ChangedVerdict {
  const { id, say } = (after ?? before)!;
  return {
    id,
    say,
    before: before?.verdict ?? null,
    after: after?.verdict ?? null,
    shareBefore: before?.share ?? null,
    shareAfter: after?.share ?? null,
    words: `${id}: ${before?.verdict ?? 'new'} → ${after?.verdict ?? 'gone'}`,
  };
}
