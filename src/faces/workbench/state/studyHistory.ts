/** Every text that the study's file has had during this visit, step by step. */

import { computed, signal } from '@preact/signals';
import { emptyHistory, type History, recorded } from '../../../study/history.ts';
import { studyText } from './studyStore.ts';

export const history = signal<History>(emptyHistory);
/** What would be taken back, and what would be done again, in words; null where there is nothing. */
export const undoWords = computed(() => history.value.done.at(-1)?.words ?? null);
export const redoWords = computed(() => history.value.undone.at(-1)?.words ?? null);
/** What was taken back or done again just now, in words; null after anything else. */
export const steppedWords = signal<string | null>(null);

export function record(
  after: string,
  words: string,
  gesture: string | null,
  by: 'here' | 'elsewhere',
  begun = performance.now(),
): void {
  const before = studyText.value?.text;
  if (before === undefined) return;
  steppedWords.value = null;
  const time = performance.now();
  history.value = recorded(history.value, { before, after, words, gesture, by, begun, time });
}
