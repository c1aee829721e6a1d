/** Steps taken back and done again. */

import { type History, type Stepped, steppedBack, steppedForth } from '../../../study/history.ts';
import { inTurn } from './inTurn.ts';
import { takeUp } from './studyFile.ts';
import { history, steppedWords } from './studyHistory.ts';
import { writeStudyText } from './studyLink.ts';
import { showText } from './studyShown.ts';
import { saveState, studyText } from './studyStore.ts';

export function undo(): Promise<void> {
  return inTurn(() => step(steppedBack, 'Taken back'));
}
export function redo(): Promise<void> {
  return inTurn(() => step(steppedForth, 'Done again'));
}

async function step(take: (from: History, text: string) => Stepped | null, told: string): Promise<void> {
  const base = studyText.value;
  const next = base === null ? null : take(history.value, base.text);
  if (base === null || next === null) return;
  saveState.value = 'saving';
  const outcome = await writeStudyText(next.text, base.hash);
  if (outcome.kind === 'refused') {
    saveState.value = 'failed';
  } else if (outcome.kind === 'stale') {
    // What came meanwhile is the last step now, and would be the one to take back.
    saveState.value = 'reloaded';
    void takeUp(outcome.study);
  } else {
    history.value = next.history;
    steppedWords.value = `${told}: ${next.step.words}`;
    saveState.value = 'saved';
    void showText(outcome.study);
  }
}
