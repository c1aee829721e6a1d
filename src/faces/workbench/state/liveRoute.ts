/** Whether the page shows the live answer: what its address says. */

import { computed, signal } from '@preact/signals';
import { readLiveHash } from './liveHash.ts';

/** What the address says now; null: the workbench. */
export const liveRoute = signal(readLiveHash(location.hash));

/** Verdicts are seen: all of them in the workbench, one of them in a live answer. */
export const showsVerdicts = computed(() => liveRoute.value === null || liveRoute.value.sentence !== null);

export function openLive(hash: string): void {
  location.hash = hash;
}
export function closeLive(): void {
  location.hash = '';
}

addEventListener('hashchange', () => {
  liveRoute.value = readLiveHash(location.hash);
});
