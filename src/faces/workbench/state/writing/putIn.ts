import { writeScript } from '../scriptStore.ts';
import type { Replaced } from './scriptMarks.ts';
import { caret } from './writing.ts';

/** Through the browser's own editing where it can, so that its undo knows of it. */
export function putIn(field: HTMLTextAreaElement, { from, to, text, caret: next }: Replaced): void {
  field.focus();
  field.setSelectionRange(from, to);
  if (!document.execCommand('insertText', false, text)) field.setRangeText(text, from, to, 'end');
  field.setSelectionRange(next, next);
  caret.value = next;
  writeScript(field.value);
}
