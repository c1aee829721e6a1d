/** The find box: what was typed, what was found, and which of it is marked. */

import { computed, effect, signal, untracked } from '@preact/signals';
import { openLive } from '../liveRoute.ts';
import { solved, solving } from '../studyStore.ts';
import { copied } from './copied.ts';
import type { Found, FoundGroup } from './found.ts';
import { foundBeside } from './foundBeside.ts';
import { askNumbers, foundNumbers } from './foundNumbers.ts';
import { foundThings, lookAround } from './foundThings.ts';

export const findOpen = signal(false);
export const typed = signal('');
/** Place in the list of the one that Enter takes. */
export const marked = signal(0);

/** A thing that fits the words as well as this comes before the numbers. */
const BETTER_THAN_NUMBERS = 1.15;

/** Groups stay together; the group with the best fit comes first. */
export const foundAll = computed((): readonly Found[] => {
  if (!findOpen.value) return [];
  const things = foundThings(typed.value);
  const numbers = foundNumbers(typed.value);
  const isAhead = (things[0]?.score ?? 0) >= BETTER_THAN_NUMBERS;
  const groups = [...new Set(things.map(({ found }) => found.group))];
  const grouped = groups.flatMap((group) =>
    things.filter(({ found }) => found.group === group).map(({ found }) => found),
  );
  const beside = foundBeside(typed.value);
  return isAhead ? [...grouped, ...numbers, ...beside] : [...numbers, ...grouped, ...beside];
});

export function openFind(): void {
  copied.value = null;
  typed.value = '';
  marked.value = 0;
  findOpen.value = true;
  lookAround().catch(reportError);
}
export function closeFind(): void {
  findOpen.value = false;
}

/** What copies a command, or is worked out, stays open to say so. */
const staying: ReadonlySet<FoundGroup> = new Set([
  'Copy a command',
  'Studies beside this one',
  'Numbers of studies beside this one',
  'Starters',
]);

export function choose(found: Found | undefined, onLive: boolean): void {
  if (found === undefined) return;
  copied.value = null;
  if (onLive && found.live !== null) {
    closeFind();
    openLive(found.live);
    return;
  }
  if (!staying.has(found.group)) closeFind();
  found.choose();
}

/** Asks for the numbers of what is typed as it is typed, and again of each study that comes. */
export function followFind(): void {
  typed.subscribe(() => {
    marked.value = 0;
  });
  effect(() => {
    const [words, study, isSolving] = [typed.value, solved.value, solving.value];
    if (!findOpen.value || isSolving || study?.isWhole === false) return;
    untracked(() => askNumbers(words)).catch(reportError);
  });
}
