/** The study's file followed: opened, and taken up again whenever it was changed elsewhere. */

import { changeBegun, type Made } from './estimates.ts';
import { inTurn } from './inTurn.ts';
import { record } from './studyHistory.ts';
import { onStudyChanged, readStudyText, type StudyText } from './studyLink.ts';
import { showFirstAnswer, showText } from './studyShown.ts';
import { saveState, studyText, trouble } from './studyStore.ts';

/** The wait for the server's answer to the first text; null where it has come. */
let opening: { readonly hash: string; readonly gone: AbortController } | null = null;

/** Loads the study and follows its file from then on. */
export async function openStudy(): Promise<void> {
  const opened = inTurn(reload);
  onStudyChanged(() => {
    if (opening !== null) endWaitForOther(opening).catch(reportError);
    void inTurn(reload);
  });
  await opened;
}

/** Nobody waits for the answer to a text that is no more. */
async function endWaitForOther({ hash, gone }: NonNullable<typeof opening>): Promise<void> {
  const now = await readStudyText();
  if (now.ok && now.value.hash !== hash) gone.abort();
}

async function reload(): Promise<void> {
  const outcome = await readStudyText();
  if (!outcome.ok) {
    trouble.value = outcome.problem;
    return;
  }
  const before = studyText.value;
  if (before?.hash === outcome.value.hash) {
    if (trouble.value !== null) await showText(outcome.value);
    return;
  }
  if (before === null) await openFirst(outcome.value);
  else {
    saveState.value = 'reloaded';
    await takeUp(outcome.value);
  }
}

/** What the server has of it is taken over; where it has nothing, the page works it out. */
async function openFirst(text: StudyText): Promise<void> {
  const gone = new AbortController();
  opening = { hash: text.hash, gone };
  const isShown = await showFirstAnswer(text, gone.signal);
  opening = null;
  // Another text stands there by now, and is read next.
  if (!isShown && !gone.signal.aborted) await takeUp(text);
}

/** Shows a text that was written elsewhere; to come there is a step like any other. @param under a change that is made on it */
export function takeUp(fresh: StudyText, under: Made | null = null): Promise<void> {
  record(fresh.text, 'a change made elsewhere', null, 'elsewhere');
  return showText(fresh, true, changeBegun({ text: fresh.text }, under));
}
