/** The sentences of a study checked by a crew, with a word where it takes long. */

import { type CheckedAnalogy, checkAnalogies } from '../../answer/analogies/index.ts';
import type { Crew } from '../../answer/asked/crew.ts';
import {
  type CheckedComparison,
  type CheckedSentence,
  type CheckOptions,
  checkSentences,
  comparePair,
} from '../../answer/sentences/index.ts';
import type { Study } from '../../study/model.ts';
import { sayIfSlow, type Terminal } from './terminal.ts';

export interface Checked {
  readonly sentences: readonly CheckedSentence[];
  readonly analogies: readonly CheckedAnalogy[];
  readonly comparison: CheckedComparison | null;
}

/**
 * With the study's analogies and comparison.
 * @param onDecided told the sentences while it is still looked where their verdicts turn
 */
export async function checkedStudy(
  study: Study,
  crew: Crew,
  terminal: Terminal,
  onDecided?: CheckOptions['onDecided'],
): Promise<Checked> {
  return {
    sentences: await checkedSentences(study, crew, terminal, onDecided && { onDecided }),
    analogies: await checkAnalogies(study, crew),
    comparison: await comparePair(study, crew),
  };
}

export async function checkedSentences(
  study: Study,
  crew: Crew,
  terminal: Terminal,
  { flips = true, onDecided }: Pick<CheckOptions, 'flips' | 'onDecided'> = {},
): Promise<readonly CheckedSentence[]> {
  if (study.sentences.length === 0) return [];
  return checkSentences(study, crew, {
    flips,
    onProvisional: () => sayIfSlow(terminal, 'Checking the sentences …'),
    onDecided(decided) {
      if (flips) sayIfSlow(terminal, 'Looking where verdicts turn …');
      onDecided?.(decided);
    },
  });
}
