/** Fields of the page’s own, finer than the server’s. */

import { signal } from '@preact/signals';
import type { ListedFlow } from '../../flows/flowList.ts';

const PLACE = 'plumeline-finer-flow';

/** Asked for; remembered by this browser. */
export const finerAsked = signal(localStorage.getItem(PLACE) === 'asked');

export function rememberFiner(isAsked: boolean): void {
  finerAsked.value = isAsked;
  if (isAsked) localStorage.setItem(PLACE, 'asked');
  else localStorage.removeItem(PLACE);
}

export const finerFields = signal<{ readonly mark: string; readonly fields: readonly ListedFlow[] }>({
  mark: '',
  fields: [],
});
