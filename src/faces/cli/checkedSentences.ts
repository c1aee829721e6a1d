/** The sentences of a study checked on all cores, with a word where it takes long. */

import { type CheckedSentence, type CheckOptions, checkSentences } from '../../answer/sentences/index.ts';
import type { Study } from '../../study/model.ts';
import { threadCrew } from '../crew/threadCrew.ts';
import { sayIfSlow, type Terminal } from './terminal.ts';

export async function checkedSentences(
  study: Study,
  terminal: Terminal,
  options: Pick<CheckOptions, 'flips'> = {},
): Promise<readonly CheckedSentence[]> {
  if (study.sentences.length === 0) return [];
  const crew = await threadCrew(study);
  try {
    return await checkSentences(study, crew, {
      ...options,
      onProvisional: () => sayIfSlow(terminal, 'Checking the sentences …'),
      onDecided: () => sayIfSlow(terminal, 'Looking where verdicts turn …'),
    });
  } finally {
    await crew.dismiss();
  }
}
