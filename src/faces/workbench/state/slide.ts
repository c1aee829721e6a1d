/**
 * Values under a hand that is still moving. `slide` is called at each move of a slider and never waits; what it was
 * called with last is shown as soon as it can be, and no file has it. Then follows either an edit of the same values
 * (`commitEdits`), or `endSlide`, which shows the study as it stands in its file.
 */

import type { ValueEdit } from '../workshop/messages.ts';
import { endTrial, tryEdits } from './studyStore.ts';

let wanted: readonly ValueEdit[] | null = null;
let isShowing = false;

export function slide(edits: readonly ValueEdit[]): void {
  wanted = edits;
  if (!isShowing) showWanted().catch(reportError);
}

/** One after the other; of what is asked for meanwhile only the last. */
async function showWanted(): Promise<void> {
  isShowing = true;
  try {
    while (wanted !== null) {
      const edits = wanted;
      wanted = null;
      await tryEdits(edits);
    }
  } finally {
    isShowing = false;
  }
}

/** The hand has let go: nothing more is to be shown of it. */
export function letGo(): void {
  wanted = null;
}

/** The move is taken back. */
export function endSlide(): Promise<void> {
  letGo();
  return endTrial();
}
