import { signal } from '@preact/signals';
import { type Near, readNear } from '../studyLink.ts';

/** Other studies within reach, as they were when the box was opened last. */
export const near = signal<Near>({ studies: [], starters: [] });

export async function readNearAgain(): Promise<void> {
  near.value = await readNear();
}
