/** Whether the page shows the live answer: what its address says. */

import { computed, signal } from '@preact/signals';
import { readLiveHash } from './liveHash.ts';

/** What the address says now; null: the workbench. */
export const liveRoute = signal(readLiveHash(location.hash));

export const isLive = computed(() => liveRoute.value !== null);

export function openLive(hash: string): void {
  location.hash = hash;
}
export function closeLive(): void {
  location.hash = '';
}

addEventListener('hashchange', () => {
  liveRoute.value = readLiveHash(location.hash);
});
