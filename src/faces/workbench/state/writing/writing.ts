/** Writing the script: whether it is being written, where the caret is, and what is to be put in there. */

import { signal } from '@preact/signals';
import { openCard, panel } from '../view.ts';

export const isWriting = signal(false);
/** Where the caret stood last; null: nowhere yet. */
export const caret = signal<number | null>(null);
/** A live number that waits to be put in; null: none. */
export const toPutIn = signal<string | null>(null);

/** Shows the script being written, with this number at the caret, or at the end of the text. */
export function writeInScript(expression: string): void {
  openCard.value = null;
  panel.value = 'script';
  toPutIn.value = expression;
  isWriting.value = true;
}
