/** What a check prints and a package holds. */

import type { Study } from '../../study/model.ts';
import { CAUTION } from '../caution.ts';
import type { CheckedSentence } from './model.ts';

export interface CheckAnswer {
  readonly format: 'plumeline check 1';
  readonly caution: string;
  readonly question: string;
  readonly sentences: readonly CheckedSentence[];
}

export function checkAnswer(
  { question }: Pick<Study, 'question'>,
  sentences: readonly CheckedSentence[],
): CheckAnswer {
  return { format: 'plumeline check 1', caution: CAUTION, question, sentences };
}
