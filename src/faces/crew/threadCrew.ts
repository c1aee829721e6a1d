/** A crew of Node threads: one hand for each core of the machine. */

import { existsSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import type { Crew } from '../../answer/asked/crew.ts';
import { crewOf } from '../../answer/asked/crewOf.ts';
import { type FarHand, farHand, type HandAnswer } from '../../answer/asked/farHand.ts';
import { localCrew } from '../../answer/asked/localCrew.ts';
import { steadyCrewOf } from '../../answer/asked/steadyCrewOf.ts';
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
export async function threadCrew(study: Study, size: number = threadsByDefault()): Promise<ThreadCrew> {
  if (size <= 1 || !existsSync(handFile)) {
    return { ...(await localCrew(study, openDataShelf())), dismiss: async () => undefined };
  }
  const threads = startThreads(size);
  return { ...threads.crewFor(study), dismiss: () => threads.dismiss() };
}

/** Of every steady crew, whatever the machine has: which thread solves an engine is part of its last digits. */
const STEADY_THREADS = 2;

/** Two threads that do the same work in the same order on every machine: the same questions give the same bits. */
export async function steadyCrew(study: Study): Promise<ThreadCrew> {
  if (!existsSync(handFile)) {
    return { ...(await localCrew(study, openDataShelf())), dismiss: async () => undefined };
  }
  const threads = startThreads(STEADY_THREADS);
  return { ...threads.crewFor(study, steadyCrewOf), dismiss: () => threads.dismiss() };
}

function threadsByDefault(): number {
  return Math.min(MOST_THREADS, availableParallelism());
}

/** Threads that go from study to study. */
export interface CrewThreads {
  /** Their crew for this study, joined as said; the crew of the study before must not be asked any more. */
  crewFor(study: Study, join?: typeof crewOf): Crew;
  /** Ends them; work under way is lost. */ dismiss(): Promise<void>;
}

export function startThreads(size: number): CrewThreads {
  const threads = Array.from({ length: size }, () => new Worker(handFile));
  let hands: readonly FarHand[] = [];
  let epoch = 0;
  let waiting = 0;
  threads.forEach((thread, i) => {
    thread.on('message', (answer: HandAnswer) => hands[i]?.hear(answer));
    thread.on('error', (error) => hands[i]?.fail(error instanceof Error ? error : new Error(String(error))));
    // Idle threads keep no program alive.
    thread.unref();
  });

  return {
    crewFor(study, join = crewOf) {
      epoch += 1;
      hands = threads.map((thread) => farHand(study, (order) => thread.postMessage(order), epoch));
      const crew = join(hands);
      return {
        size: crew.size,
        async tell(asks, points, options) {
          waiting += 1;
          for (const thread of threads) thread.ref();
          try {
            return await crew.tell(asks, points, options);
          } finally {
            waiting -= 1;
            if (waiting === 0) for (const thread of threads) thread.unref();
          }
        },
      };
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
