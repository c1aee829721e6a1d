/** A crew of the browser's workers: one hand for each core, kept from study to study. */

import type { Crew } from '../../../answer/asked/crew.ts';
import { crewOf } from '../../../answer/asked/crewOf.ts';
import { type FarHand, farHand, type HandAnswer } from '../../../answer/asked/farHand.ts';
import type { Study } from '../../../study/model.ts';

const MOST_WORKERS = 8;
let workers: readonly Worker[] | null = null;
let epochs = 0;

/** A crew for this study. The one made before must not be asked any more: its workers are the same. */
export function workerCrew(study: Study): Crew {
  workers ??= Array.from({ length: Math.min(MOST_WORKERS, navigator.hardwareConcurrency || 1) }, start);
  const epoch = ++epochs;
  return crewOf(workers.map((worker) => handOf(worker, study, epoch)));
}

function start(): Worker {
  return new Worker(new URL('./crewWorker.ts', import.meta.url), { type: 'module' });
}

function handOf(worker: Worker, study: Study, epoch: number): FarHand {
  const hand = farHand(study, (order) => worker.postMessage(order), epoch);
  worker.onmessage = ({ data }: MessageEvent<HandAnswer>) => hand.hear(data);
  worker.onerror = (event) => hand.fail(new Error(event.message || 'A worker of the crew failed.'));
  return hand;
}
