/** A sentence that is being written, judged before it is kept: on few draws, so its verdict is provisional. */

import type { Crew } from '../../../answer/asked/crew.ts';
import { compileTest, scopeOf } from '../../../answer/expression/index.ts';
import { type CheckedSentence, checkSentences } from '../../../answer/sentences/index.ts';
import { type Outcome, ProblemError } from '../../../numerics/problem.ts';
import type { Study } from '../../../study/model.ts';

/** Enough to see on which side of a line a share lies, and soon done. */
const DRAWS = 200;

/** Null where there is no test that can be read. @throws what the crew throws, an abort among it */
export async function draftJudged(
  study: Study,
  crew: Crew,
  say: string,
  holds: string,
  signal?: AbortSignal,
): Promise<Outcome<CheckedSentence | null>> {
  const test = holds.trim();
  if (test === '' || !compileTest(test, scopeOf(study)).ok) return { ok: true, value: null };
  const draft = { id: 'draft', say: say.trim(), holds: test, said: true, sources: [] };
  try {
    const [found] = await checkSentences({ ...study, sentences: [draft] }, crew, {
      count: DRAWS,
      flips: false,
      ...(signal && { signal }),
    });
    return { ok: true, value: found === undefined ? null : { ...found, provisional: true } };
  } catch (error) {
    if (error instanceof ProblemError) return { ok: false, problem: error.problem };
    throw error;
  }
}
