/** Whole flows computed by a thread of its own, so that the server goes on answering. */

import { existsSync } from 'node:fs';
import { Worker } from 'node:worker_threads';
import type { FlowWanted } from '../../telling/figures/flowsWanted.ts';
import type { FlowOrder } from './flowThread.ts';

/** Lies beside this file once it is built; what runs from the sources computes where it asks. */
export const flowThreadFile = new URL('./flowThread.js', import.meta.url);

/** Afterwards they lie in the cache, those that can be computed. @throws the signal's reason */
export async function keptAside(
  text: string,
  flows: readonly FlowWanted[],
  signal?: AbortSignal,
): Promise<void> {
  // A signal given already fires no more.
  signal?.throwIfAborted();
  if (flows.length === 0 || !existsSync(flowThreadFile)) return;
  const thread = new Worker(flowThreadFile);
  thread.unref();
  const stop = (): void => void thread.terminate();
  signal?.addEventListener('abort', stop, { once: true });
  try {
    await new Promise<void>((resolve) => {
      for (const event of ['message', 'error', 'exit'] as const) thread.once(event, () => resolve());
      thread.postMessage({ is: 'keep', text, flows } satisfies FlowOrder);
    });
  } finally {
    signal?.removeEventListener('abort', stop);
    await thread.terminate();
  }
  signal?.throwIfAborted();
}
