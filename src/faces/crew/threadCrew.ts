/** A crew of Node threads: one hand for each core of the machine. */

import { existsSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import type { Crew } from '../../answer/asked/crew.ts';
import { crewOf } from '../../answer/asked/crewOf.ts';
import { type FarHand, farHand, type HandAnswer } from '../../answer/asked/farHand.ts';
import { localCrew } from '../../answer/asked/localCrew.ts';
import type { Study } from '../../study/model.ts';
import { openDataShelf } from '../disk/data.ts';

export interface ThreadCrew extends Crew {
  /** Ends the threads; work under way is lost. */ dismiss(): Promise<void>;
}

/** More threads than this gain nothing: they wait for memory. */
const MOST_THREADS = 8;

/** Lies beside this file once it is built; what runs from the sources works in one thread. */
const handFile = new URL('./threadHand.js', import.meta.url);

/** @param size number of threads; by default one for each core. With one, the work is done in this thread. */
export async function threadCrew(
  study: Study,
  size: number = Math.min(MOST_THREADS, availableParallelism()),
): Promise<ThreadCrew> {
  if (size <= 1 || !existsSync(handFile))
    return { ...(await localCrew(study, openDataShelf())), dismiss: async () => undefined };
  const threads = Array.from({ length: size }, () => new Worker(handFile));
  const hands = threads.map((thread): FarHand => {
    const hand = farHand(study, (order) => thread.postMessage(order));
    thread.on('message', (answer: HandAnswer) => hand.hear(answer));
    thread.on('error', (error) => hand.fail(error instanceof Error ? error : new Error(String(error))));
    // An idle crew keeps no program alive.
    thread.unref();
    return hand;
  });
  const crew = crewOf(hands);
  return {
    ...crew,
    async tell(asks, points, options) {
      for (const thread of threads) thread.ref();
      try {
        return await crew.tell(asks, points, options);
      } finally {
        for (const thread of threads) thread.unref();
      }
    },
    async dismiss() {
      await Promise.all(threads.map((thread) => thread.terminate()));
      for (const hand of hands) hand.fail(new Error('the crew was dismissed'));
    },
  };
}

/** What `work` gives, the crew dismissed afterwards whatever happens. */
export async function dismissing<Result>(crew: ThreadCrew, work: () => Promise<Result>): Promise<Result> {
  try {
    return await work();
  } finally {
    await crew.dismiss();
  }
}
