/** `review.yaml` → sign-offs; a file that is not as `plumeline review` writes it is told, never half read. */

import { LineCounter, parseDocument } from 'yaml';
import type { StudyProblem } from '../model.ts';
import { isDay, type SignOff } from './model.ts';

export type ReviewOutcome =
  | { readonly ok: true; readonly signOffs: readonly SignOff[] }
  | { readonly ok: false; readonly problem: StudyProblem };

export const REVIEW_FORM = 1;

export function readReview(text: string, file = 'review.yaml'): ReviewOutcome {
  const lines = new LineCounter();
  const document = parseDocument(text, { lineCounter: lines, maxAliasCount: 0 } as object);
  const [error] = document.errors;
  if (error !== undefined) {
    const { line, col } = lines.linePos(error.pos[0]);
    return { ok: false, problem: problem(file, error.message.split('\n')[0]!, { line, column: col }) };
  }
  let found: unknown;
  try {
    found = document.toJS({ maxAliasCount: 0 });
  } catch {
    return { ok: false, problem: problem(file, 'It refers to itself.', null) };
  }
  const { reviews = null, 'plumeline-review': form = null } = isRecord(found) ? found : {};
  if (form !== REVIEW_FORM || !Array.isArray(reviews)) {
    return { ok: false, problem: problem(file, 'It is no review that this version reads.', null) };
  }
  const signOffs: SignOff[] = [];
  for (const [i, item] of reviews.entries()) {
    const signOff = signOffOf(item);
    if (signOff === null) {
      return { ok: false, problem: problem(file, `Its entry ${i + 1} is not whole.`, null) };
    }
    signOffs.push(signOff);
  }
  return { ok: true, signOffs };
}

function signOffOf(item: unknown): SignOff | null {
  if (!isRecord(item)) return null;
  const { id, by, date, hash, say, test, verdict, rests } = item;
  const whole =
    isText(id) && isText(by) && isText(date) && isDay(date) && isText(hash) && isText(say) && isText(verdict);
  if (!whole || !Array.isArray(rests) || !rests.every(isText)) return null;
  if (test !== null && !isText(test)) return null;
  return { id, by, date, hash, reviewed: { say, test, verdict, rests } };
}

const isText = (value: unknown): value is string => typeof value === 'string';
const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

function problem(file: string, what: string, place: StudyProblem['place']): StudyProblem {
  return {
    code: 'review-unreadable',
    what,
    why: 'No sign-off in it counts.',
    mend: 'Mend it, or delete it and sign again: plumeline review my-question --by NAME',
    file,
    place,
    path: '',
  };
}
