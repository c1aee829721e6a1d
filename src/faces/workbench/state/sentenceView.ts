/** Which sentence is open, and which one is being written. */

import { signal } from '@preact/signals';
import { openCard, panel } from './view.ts';

/** Id of the sentence whose details are shown. */
export const openSentence = signal<string | null>(null);

/** A sentence being written. */
export interface SentenceDraft {
  /** Id of the one that is changed; null for a new one. */ readonly was: string | null;
  readonly say: string;
  readonly holds: string;
  readonly said: boolean;
}
export const editDraft = signal<SentenceDraft | null>(null);

/** Shows the sentences with this one open. */
export function showSentence(id: string): void {
  openCard.value = null;
  panel.value = 'sentences';
  openSentence.value = id;
}

/** Shows the sentences with a new one begun. */
export function beginSentence(say: string, holds: string): void {
  openCard.value = null;
  panel.value = 'sentences';
  editDraft.value = { was: null, say, holds, said: true };
}
