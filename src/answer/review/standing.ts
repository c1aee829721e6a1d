/** Whether a sign-off still stands, and what voids it. */

import { type ReviewedState, type SignOff, stateText } from '../../study/review/model.ts';
import type { Reviewable } from './reviewable.ts';

export interface SignOffStanding {
  readonly id: string;
  readonly by: string;
  /** `2026-11-26` */ readonly date: string;
  readonly stands: boolean;
  /** What has changed since, one line each; empty where it stands. */ readonly changed: readonly string[];
}

/** @param sha256 hexadecimal digest of a text */
export function standingsOf(
  signOffs: readonly SignOff[],
  items: readonly Reviewable[],
  sha256: (text: string) => string,
): readonly SignOffStanding[] {
  return signOffs.map((signOff) => {
    const { id, by, date } = signOff;
    const changed = changesSince(signOff, items.find((item) => item.id === id) ?? null, sha256);
    return { id, by, date, stands: changed.length === 0, changed };
  });
}

function changesSince(
  { hash, reviewed }: SignOff,
  item: Reviewable | null,
  sha256: (text: string) => string,
): readonly string[] {
  if (hash !== sha256(stateText(reviewed))) return ['the record of what was reviewed was itself edited'];
  if (item === null) return ['it is no longer in the study'];
  return stateChanges(reviewed, item.state);
}

export function stateChanges(before: ReviewedState, now: ReviewedState): readonly string[] {
  const lines: string[] = [];
  if (before.say !== now.say) lines.push(`the words were “${before.say}”`);
  if (before.test !== now.test) lines.push(`the test was ${before.test ?? 'none'}`);
  if (before.verdict !== now.verdict) lines.push(`it was “${before.verdict}”, now “${now.verdict}”`);
  const gone = before.rests.filter((line) => !now.rests.includes(line));
  const come = now.rests.filter((line) => !before.rests.includes(line));
  if (gone.length > 0) lines.push(`no longer so: ${gone.join('; ')}`);
  if (come.length > 0) lines.push(`now: ${come.join('; ')}`);
  return lines;
}

/** One sentence: who signed when, and whether it still counts. */
export function standingWords({ by, date, stands, changed }: SignOffStanding): string {
  const signed = `Reviewed by ${by} on ${date}`;
  return stands ? `${signed}.` : `${signed}; void since a later change: ${changed.join('; ')}.`;
}
