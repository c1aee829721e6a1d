/** Inputs that are locked together: what is written for one engine is written for the other. A way of working, kept by the browser; no part of the study. */

import { effect, signal } from '@preact/signals';
import { studyName } from './studyStore.ts';

/** Keys of the lines. */
export const locks = signal<ReadonlySet<string>>(new Set());

const MOST_LOCKS = 100;
const placeOf = (study: string): string => `plumeline-locks ${study}`;

effect(() => {
  if (studyName.value !== '') locks.value = stored(studyName.value);
});

export function toggleLock(key: string): void {
  const next = new Set(locks.value);
  if (!next.delete(key)) next.add(key);
  locks.value = next;
  const place = placeOf(studyName.value);
  if (next.size === 0) localStorage.removeItem(place);
  else localStorage.setItem(place, JSON.stringify([...next].slice(-MOST_LOCKS)));
}

/** What another program has put there is no list of keys, and means nothing. */
function stored(study: string): ReadonlySet<string> {
  const text = localStorage.getItem(placeOf(study));
  if (text === null) return new Set();
  try {
    const keys: unknown = JSON.parse(text);
    return new Set(Array.isArray(keys) ? keys.filter((key) => typeof key === 'string') : []);
  } catch {
    return new Set();
  }
}
