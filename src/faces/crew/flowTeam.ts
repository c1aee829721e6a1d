/** Node threads that take the steps of one whole flow together. */

import { existsSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import type { Problem } from '../../numerics/problem.ts';
import type { HandWork, StepTeam } from '../../physics/euler/index.ts';

export interface FlowTeam extends StepTeam {
  /** Ends the threads; no field that they share can be stepped any more. */ dismiss(): Promise<void>;
}

/** A second makes a step of a large engine 1.6 times as fast, eight 3.5 times: more wait for the sides of the blocks, which one thread fills. */
const MOST_THREADS = 8;

/** Steps of fewer cells take less than half a millisecond, too little to be worth eight waits for each other. */
const FEWEST = 5000;

/** [ms] A share of a step takes milliseconds; a machine under load may hold a thread back for long. */
const PATIENCE = 20_000;

/** Lies beside this file once it is built; what runs from the sources works in one thread. */
const handFile = new URL('./flowHand.js', import.meta.url);

export interface FlowTeamOptions {
  /** The one that asks counted; absent: one for each core, up to eight. */ readonly threads?: number;
  readonly file?: URL;
  /** See StepTeam. */ readonly fewest?: number;
  readonly patience?: number;
}

/** Null: one thread is all. */
export function flowTeam({
  threads = Math.min(MOST_THREADS, availableParallelism()),
  file = handFile,
  fewest = FEWEST,
  patience = PATIENCE,
}: FlowTeamOptions = {}): FlowTeam | null {
  if (threads <= 1 || !existsSync(file)) return null;
  /** Begun with the first field: what is taken from the cache needs none. */
  let workers: readonly Worker[] | null = null;
  const begun = (): readonly Worker[] => {
    workers ??= Array.from({ length: threads - 1 }, () => worker(file, () => (team.lost ??= ENDED)));
    return workers;
  };
  const team: FlowTeam = {
    hands: threads - 1,
    fewest,
    patience,
    leave: null,
    lost: null,
    send(work: HandWork) {
      begun()[work.hand - 1]!.postMessage(work);
    },
    async dismiss() {
      team.lost ??= DISMISSED;
      await Promise.all((workers ?? []).map((each) => each.terminate()));
    },
  };
  return team;
}

function worker(file: URL, ended: () => void): Worker {
  const thread = new Worker(file);
  thread.on('error', ended);
  thread.on('exit', ended);
  // An idle thread keeps no program alive.
  thread.unref();
  return thread;
}

const ENDED: Problem = {
  code: 'flow-thread-lost',
  what: 'A thread that was to take a share of the flow field has ended.',
  mend: 'Ask again, or for one thread: --threads 1.',
};
const DISMISSED: Problem = {
  code: 'flow-team-dismissed',
  what: 'The threads that took the steps of this flow field were sent away.',
  mend: 'Begin a new field.',
};
