/** The sentences of a study checked on all cores, with a word where it takes long. */

import type { Crew } from '../../answer/asked/crew.ts';
import {
  type CheckedComparison,
  type CheckedSentence,
  type CheckOptions,
  checkSentences,
  comparePair,
} from '../../answer/sentences/index.ts';
import type { Study } from '../../study/model.ts';
import { threadCrew } from '../crew/threadCrew.ts';
import { sayIfSlow, type Terminal } from './terminal.ts';

export interface Checked {
  readonly sentences: readonly CheckedSentence[];
  readonly comparison: CheckedComparison | null;
}

/** With the study's comparison, on the same threads. */
export async function checkedStudy(study: Study, terminal: Terminal): Promise<Checked> {
  return withCrew(study, async (crew) => ({
    sentences: await checkSentences(study, crew, options(terminal)),
    comparison: await comparePair(study, crew),
  }));
}

export async function checkedSentences(
  study: Study,
  terminal: Terminal,
  { flips = true }: Pick<CheckOptions, 'flips'> = {},
): Promise<readonly CheckedSentence[]> {
  if (study.sentences.length === 0) return [];
  return withCrew(study, (crew) => checkSentences(study, crew, { ...options(terminal), flips }));
}

function options(terminal: Terminal): CheckOptions {
  return {
    onProvisional: () => sayIfSlow(terminal, 'Checking the sentences …'),
    onDecided: () => sayIfSlow(terminal, 'Looking where verdicts turn …'),
  };
}

async function withCrew<Result>(study: Study, use: (crew: Crew) => Promise<Result>): Promise<Result> {
  const crew = await threadCrew(study);
  try {
    return await use(crew);
  } finally {
    await crew.dismiss();
  }
}
