/** How the study in its file stands to what the page shows, in words. */

import { computed } from '@preact/signals';
import { isEstimated } from './estimates.ts';
import { enginesOnScreen } from './pair.ts';
import { steppedWords } from './studyHistory.ts';
import { faults, type SaveState, saveState, solved, solving, trouble } from './studyStore.ts';

const saveWords: Readonly<Record<SaveState, string>> = {
  saved: 'saved in study.yaml',
  saving: 'saving …',
  reloaded: 'study.yaml was changed elsewhere; shown as it is now',
  failed: 'not saved',
};

/** Problems of the program or its data; all others are of reading the file. */
const notOfTheFile: ReadonlySet<string> = new Set(['program-fault', 'data-not-reachable']);

/** What stops the page altogether, for its heading; null when nothing does. */
export const stopWords = computed(() => {
  if (trouble.value === null) return null;
  if (notOfTheFile.has(trouble.value.code)) return 'This cannot be worked out now';
  return trouble.value.code === 'server-not-reachable'
    ? 'The program behind this page is gone'
    : 'study.yaml cannot be read now';
});

/** What still follows. */
function workingWords(): string {
  const study = solved.value;
  if (study === null || study.isWhole || study.awaited.length > 0) return 'working it out …';
  return 'jets and finer steps of altitude follow …';
}

/** What is on screen of engines whose inputs move, before what becomes of it. */
function movingWords(then: string): string {
  const standings = enginesOnScreen.value.flatMap((engine) => engine.standing ?? []);
  if (standings.some((one) => one !== 'before')) return `first estimate; ${then}`;
  return standings.length > 0 ? `as it was before; ${then}` : then;
}

/** One line for the head of the page; it never says “saved” or “as it is now” of a text that is not shown. */
export const standing = computed(() => {
  if (solving.value) return isEstimated.value ? movingWords('working it out …') : workingWords();
  const before = solved.value === null ? '' : '; shown as it was before';
  if (stopWords.value !== null) return `${stopWords.value}${before}`;
  if (faults.value.length > 0)
    return `study.yaml has ${faults.value.length === 1 ? 'a fault' : 'faults'}${before}`;
  if (solved.value === null) return 'opening the study …';
  if (isEstimated.value) return movingWords('not written yet');
  if (saveState.value === 'saved' && steppedWords.value !== null) return steppedWords.value;
  return saveWords[saveState.value];
});
