/** Which verdicts an edit changed. */

import type { Problem } from '../../numerics/problem.ts';
import type { CheckedSentence, Verdict } from './model.ts';
import { verdictLabel } from './words.ts';

/** As little of a checked sentence as a comparison needs. */
export interface Judged extends Pick<CheckedSentence, 'id' | 'say' | 'verdict' | 'share'> {
  /** Why it could not be judged; absent where that is not known. */ readonly problem?: Problem | null;
}

export interface ChangedVerdict {
  readonly id: string;
  readonly say: string;
  /** Null: the sentence is new. */ readonly before: Verdict | null;
  /** Null: it is gone. */ readonly after: Verdict | null;
  readonly shareBefore: number | null;
  readonly shareAfter: number | null;
  /** The same for people: a test that cannot be read has words of its own. */
  readonly beforeWords: string;
  readonly afterWords: string;
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
    return was !== undefined && labelOf(was) === labelOf(sentence) ? [] : [change(was ?? null, sentence)];
  });
  return [...changed, ...before.filter(({ id }) => !now.has(id)).map((was) => change(was, null))];
}

const labelOf = ({ verdict, problem = null }: Judged): string => verdictLabel({ verdict, problem });

function change(before: Judged | null, after: Judged | null): ChangedVerdict {
  const { id, say } = (after ?? before)!;
  const beforeWords = before === null ? 'new' : labelOf(before);
  const afterWords = after === null ? 'gone' : labelOf(after);
  return {
    id,
    say,
    before: before?.verdict ?? null,
    after: after?.verdict ?? null,
    shareBefore: before?.share ?? null,
    shareAfter: after?.share ?? null,
    beforeWords,
    afterWords,
    words: `${id}: ${beforeWords} → ${afterWords}`,
  };
}
