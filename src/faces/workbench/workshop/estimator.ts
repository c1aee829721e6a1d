/** The estimator seen from the page. Of what is asked while it is at work only the last is asked. */

import type { Bases, Change, EstimatorOrder, EstimatorReport } from './estimatorMessages.ts';

/** A study's text, and √(A_t/π) of its engines [m]. */
interface AnsweredText {
  readonly text: string;
  readonly throatRadii: Readonly<Record<string, number>>;
}

let worker: Worker | null = null;
let epoch = 0;
/** The study as answered last. */
let answered: AnsweredText | null = null;
let number = 0;
/** What it is at work on; null: nothing. */
let atWork: number | null = null;
/** What it is at work on for nobody. */
let forgotten: number | null = null;
/** What was asked for last and is not begun. */
let next: readonly Change[] | null = null;
let hear: (bases: Bases | null) => void = () => undefined;

function post(order: EstimatorOrder): void {
  if (worker === null) {
    worker = start();
    // One that comes in place of another has to be told of the study first.
    if (order.kind !== 'base' && answered !== null) worker.postMessage({ kind: 'base', epoch, ...answered });
  }
  worker.postMessage(order);
}

function start(): Worker {
  const fresh = new Worker(new URL('./estimatorWorker.ts', import.meta.url), { type: 'module' });
  fresh.addEventListener('message', ({ data }: MessageEvent<EstimatorReport>) => settle(data));
  fresh.addEventListener('error', (event) => {
    reportError(new Error(event.message || 'The estimator failed.'));
    restart(fresh);
  });
  return fresh;
}

/** A worker that failed answers no more: another one takes its place, and what was asked for last. */
function restart(failed: Worker): void {
  if (worker !== failed) return;
  failed.terminate();
  worker = null;
  atWork = null;
  if (next !== null) begin(next);
}

function settle(report: EstimatorReport): void {
  const isLatest = report.number === atWork && report.number !== forgotten;
  if (report.number === atWork) atWork = null;
  if ('fault' in report) reportError(new Error(report.fault));
  else if (isLatest && report.epoch === epoch) hear(report.bases);
  if (atWork === null && next !== null) begin(next);
}

function begin(changes: readonly Change[]): void {
  next = null;
  atWork = ++number;
  post({ kind: 'estimate', number, epoch, changes });
}

/**
 * The study as answered in full; estimates are of changes to it from now on. The first is told a little later: while the
 * page loads, it needs the processor more than an estimate of what nobody has moved yet.
 */
export function estimateFrom(text: string, throatRadii: AnsweredText['throatRadii']): void {
  epoch += 1;
  answered = { text, throatRadii };
  if (worker === null) setTimeout(tellFirst, FIRST_WAIT);
  else post({ kind: 'base', epoch, ...answered });
}

/** [ms] */
const FIRST_WAIT = 600;

/** Unless something was asked meanwhile. */
function tellFirst(): void {
  if (worker === null && answered !== null) post({ kind: 'base', epoch, ...answered });
}

/** @param told of each estimate that is still wanted when it comes */
export function askEstimate(changes: readonly Change[], told: (bases: Bases | null) => void): void {
  hear = told;
  if (atWork === null) begin(changes);
  else next = changes;
}

/** Nothing is asked any more. */
export function endEstimate(): void {
  forgotten = atWork;
  next = null;
}
