/** `review.yaml` in the folder of a study. */

import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { ProblemError } from '../../numerics/problem.ts';
import type { SignOff } from '../../study/review/model.ts';
import { readReview } from '../../study/review/readReview.ts';
import { reviewText } from '../../study/review/writeReview.ts';
import { writeFileAtomically } from './atomicWrite.ts';

export const REVIEW_FILE = 'review.yaml';

/** Empty where there is none. @throws ProblemError where it cannot be read */
export async function readReviewFile(folder: string): Promise<readonly SignOff[]> {
  const text = await readFile(join(folder, REVIEW_FILE), 'utf8').catch((error: NodeJS.ErrnoException) => {
    if (error.code === 'ENOENT') return null;
    throw new ProblemError({
      code: 'review-unreadable',
      what: `${REVIEW_FILE} cannot be read: ${error.message}.`,
      mend: 'Look to its permissions.',
    });
  });
  if (text === null) return [];
  const outcome = readReview(text);
  if (!outcome.ok) {
    const { problem } = outcome;
    throw new ProblemError({
      ...problem,
      where: problem.place === null ? problem.file : `${problem.file}, line ${problem.place.line}`,
    });
  }
  return outcome.signOffs;
}

export async function writeReviewFile(folder: string, signOffs: readonly SignOff[]): Promise<void> {
  await writeFileAtomically(join(folder, REVIEW_FILE), reviewText(signOffs));
}
