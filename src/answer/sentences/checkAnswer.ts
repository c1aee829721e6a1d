/** What a check prints and a package holds. */

import type { Study } from '../../study/model.ts';
import { CAUTION } from '../caution.ts';
import type { CheckedComparison } from './comparePair.ts';
import type { CheckedSentence } from './model.ts';

export interface CheckAnswer {
  readonly format: 'plumeline check 1';
  readonly caution: string;
  readonly question: string;
  readonly sentences: readonly CheckedSentence[];
  /** The study’s pair at pad and vacuum, each difference with its band; null where there is no pair. */
  readonly comparison: CheckedComparison | null;
}

export function checkAnswer(
  { question }: Pick<Study, 'question'>,
  sentences: readonly CheckedSentence[],
  comparison: CheckedComparison | null,
): CheckAnswer {
  return { format: 'plumeline check 1', caution: CAUTION, question, sentences, comparison };
}
