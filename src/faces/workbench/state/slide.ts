/**
 * Values under a hand that is still moving. `slide` is called at each move of a slider and never waits; what it was
 * called with last is estimated at once, and shown in full where the hand rests. No file has it. Then follows either an
 * edit of the same values (`commitEdits`), or `endSlide`, which shows the study as it stands in its file.
 */

import type { ValueEdit } from '../workshop/messages.ts';
import { endDraft, estimateDraft } from './estimates.ts';
import { endTrial, tryEdits } from './studyTrial.ts';

/** A hand that has not moved for so long rests [ms]. */
const REST = 300;

let timer: ReturnType<typeof setTimeout> | undefined;

export function slide(edits: readonly ValueEdit[]): void {
  clearTimeout(timer);
  estimateDraft(edits);
  timer = setTimeout(() => {
    tryEdits(edits).catch(reportError);
  }, REST);
}

/** The hand has let go: nothing more is to be shown of it. */
export function letGo(): void {
  clearTimeout(timer);
}

/** The move is taken back. */
export function endSlide(): Promise<void> {
  letGo();
  endDraft();
  return endTrial();
}
