/** Values tried out: they stand on the page and in no file. */

import type { Problem } from '../../../numerics/problem.ts';
import type { Edit } from '../workshop/messages.ts';
import { editText } from '../workshop/workshop.ts';
import { editWords } from './editWords.ts';
import { changeBegun, changeRefused } from './estimates.ts';
import { inTurn } from './inTurn.ts';
import { showText } from './studyShown.ts';
import { solved, studyText, tried } from './studyStore.ts';

/** Shows the study with one value changed, and writes nothing. */
export function tryValue(path: string, value: string): Promise<readonly Problem[]> {
  return tryEdits([{ path, value }]);
}

/** The same of several values at once. */
export function tryEdits(edits: readonly Edit[]): Promise<readonly Problem[]> {
  const change = changeBegun({ edits });
  return inTurn(async () => {
    const base = studyText.value;
    const edited =
      base === null
        ? null
        : await editText(base.text, edits).catch((error: unknown) => {
            changeRefused(change);
            throw error;
          });
    if (base === null || edited === null || !edited.ok) {
      changeRefused(change);
      return edited === null || edited.ok ? [] : edited.problems;
    }
    tried.value = editWords(edits, solved.value?.study);
    await showText({ ...base, text: edited.text }, false, change);
    return [];
  });
}

/** Shows the study as it stands in its file again. */
export function endTrial(): Promise<void> {
  return inTurn(async () => {
    if (tried.value === null || studyText.value === null) return;
    tried.value = null;
    await showText(studyText.value);
  });
}
