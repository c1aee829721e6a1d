/** The desk seen from the page: checks of the study on screen, and questions about its numbers. */

import type { Study } from '../../../study/model.ts';
import type { Asked, DeskOrder, DeskReport, QuestionKind, SweepSoFar, ToldOf } from './deskMessages.ts';
import { studyInHand } from './studyInHand.ts';

export type CheckReport = Extract<DeskReport, { readonly epoch: number }>;

interface Waiting {
  readonly resolve: (told: unknown) => void;
  readonly reject: (error: Error) => void;
  readonly soFar: (found: SweepSoFar) => void;
}

let worker: Worker | null = null;
let epoch = 0;
let numbers = 0;
let listener: (report: CheckReport) => void = () => undefined;
const waiting = new Map<number, Waiting>();
const inHand = studyInHand();

/** Rejected with this where the study changed before the answer came, or nobody wants it any more. */
export class QuestionEnded extends Error {
  override readonly name = 'QuestionEnded';
}

function post(order: DeskOrder): void {
  worker ??= start();
  worker.postMessage(order);
}

function start(): Worker {
  const fresh = new Worker(new URL('./deskWorker.ts', import.meta.url), { type: 'module' });
  fresh.addEventListener('message', ({ data }: MessageEvent<DeskReport>) => hear(data));
  fresh.addEventListener('error', (event) => {
    const error = new Error(event.message || 'The desk failed.');
    for (const { reject } of waiting.values()) reject(error);
    waiting.clear();
    reportError(error);
  });
  return fresh;
}

function hear(report: DeskReport): void {
  if ('epoch' in report) {
    if (report.epoch === epoch) listener(report);
    return;
  }
  if (report.kind === 'so far') {
    waiting.get(report.number)?.soFar(report.found);
    return;
  }
  if (report.kind === 'fault' && report.number === null) {
    reportError(new Error(report.message));
    return;
  }
  const number = report.number ?? 0;
  const one = waiting.get(number);
  waiting.delete(number);
  if (report.kind === 'told') one?.resolve(report.told);
  else if (report.kind === 'ended') one?.reject(new QuestionEnded());
  else one?.reject(new Error(report.message));
}

/** Begins a check; the one before ends at once. @param checks false: the study is taken in hand for questions alone */
export function beginCheck(study: Study, checks: boolean, tell: (report: CheckReport) => void): void {
  listener = tell;
  post({ kind: 'study', epoch: ++epoch, study, checks });
  inHand.take();
}

/** Ends all that the desk does: the study is about to change. */
export function endCheck(): void {
  epoch += 1;
  inHand.drop();
  if (worker !== null) post({ kind: 'stop' });
}

/** A question about the study in hand, or where there is none, about the next. @param soFar told how far a sweep has come @throws QuestionEnded */
export function askDesk<Kind extends QuestionKind>(
  about: Kind,
  asked: Asked<Kind>,
  signal?: AbortSignal,
  soFar: (found: SweepSoFar) => void = () => undefined,
): Promise<ToldOf<Kind>> {
  const number = ++numbers;
  return new Promise((resolve, reject) => {
    waiting.set(number, { resolve: (told) => resolve(told as ToldOf<Kind>), reject, soFar });
    let isPut = false;
    void inHand.come().then(() => {
      if (!waiting.has(number)) return;
      isPut = true;
      post({ kind: 'question', number, about, asked } as DeskOrder);
    });
    signal?.addEventListener('abort', () => {
      if (!waiting.delete(number)) return;
      if (isPut) post({ kind: 'forget', number });
      reject(new QuestionEnded());
    });
  });
}
