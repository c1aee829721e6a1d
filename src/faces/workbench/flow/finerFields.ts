/** Fields of the page’s own, finer than the server’s. */

import { signal } from '@preact/signals';
import type { ListedFlow } from '../../flows/flowList.ts';

const PLACE = 'plumeline-finer-flow';

/** Wanted, where the machine has a graphics processor, until somebody takes it back; this browser remembers that. */
export const finerAsked = signal(localStorage.getItem(PLACE) !== 'left');

export function rememberFiner(isAsked: boolean): void {
  finerAsked.value = isAsked;
  if (isAsked) localStorage.removeItem(PLACE);
  else localStorage.setItem(PLACE, 'left');
}

export const finerFields = signal<{ readonly mark: string; readonly fields: readonly ListedFlow[] }>({
  mark: '',
  fields: [],
});
