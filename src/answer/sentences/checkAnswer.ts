/** What a check prints and a package holds. */

import type { Study } from '../../study/model.ts';
import type { CheckedAnalogy } from '../analogies/model.ts';
import { CAUTION } from '../caution.ts';
import { checkFacts } from './checkFacts.ts';
import type { CheckedComparison } from './comparePair.ts';
import type { CheckedSentence } from './model.ts';

export interface CheckAnswer {
  readonly format: 'plumeline check 1';
  readonly caution: string;
  readonly question: string;
  readonly sentences: readonly CheckedSentence[];
  /** Reported, not computed. */ readonly facts: readonly CheckedSentence[];
  readonly analogies: readonly CheckedAnalogy[];
  /** The study’s pair at pad and vacuum, each difference with its band; null where there is no pair. */
  readonly comparison: CheckedComparison | null;
}

export function checkAnswer(
  study: Pick<Study, 'question' | 'facts' | 'sources'>,
  sentences: readonly CheckedSentence[],
  analogies: readonly CheckedAnalogy[],
  comparison: CheckedComparison | null,
): CheckAnswer {
  return {
    format: 'plumeline check 1',
    caution: CAUTION,
    question: study.question,
    sentences,
    facts: checkFacts(study),
    analogies,
    comparison,
  };
}
