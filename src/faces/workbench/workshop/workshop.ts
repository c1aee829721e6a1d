/** The worker seen from the page: reading, editing and solving studies off the main thread. */

import type { Ask, Told } from '../../../answer/asked/model.ts';
import type { VehicleWorth } from '../../../answer/worth/index.ts';
import type { Outcome } from '../../../numerics/problem.ts';
import type { Delivery, Edit, EditOutcome, Errand, OpenOutcome, Order } from './messages.ts';
import { nextTask } from './nextTask.ts';

type Settle = { resolve: (delivery: Delivery) => void; reject: (error: Error) => void };

let worker: Worker | null = null;
let count = 0;
const waiting = new Map<number, Settle>();

function send(errand: Errand): Promise<Delivery> {
  worker ??= start();
  const running = worker;
  const number = ++count;
  return new Promise((resolve, reject) => {
    waiting.set(number, { resolve, reject });
    running.postMessage({ number, errand } satisfies Order);
  });
}

function start(): Worker {
  const fresh = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
  fresh.addEventListener('message', ({ data }: MessageEvent<Delivery>) => {
    const settle = waiting.get(data.number);
    waiting.delete(data.number);
    if (data.kind === 'failed') settle?.reject(new Error(data.message));
    else settle?.resolve(data);
  });
  fresh.addEventListener('error', (event) => {
    for (const { reject } of waiting.values()) reject(new Error(event.message || 'The worker failed.'));
    waiting.clear();
  });
  return fresh;
}

/** Reads and solves a study text; null where a later one has overtaken it. */
export async function openText(text: string): Promise<OpenOutcome | null> {
  const delivery = await send({ kind: 'open', text });
  if (delivery.kind === 'given up') return null;
  if (delivery.kind !== 'open') throw new Error(`Unexpected delivery: ${delivery.kind}`);
  // To take in so much and to draw it are two pieces of work: neither holds the page for long.
  await nextTask();
  return delivery.outcome;
}

/** What the other engine is worth to the vehicles of the study opened last. */
export async function weighVehicles(): Promise<Outcome<readonly VehicleWorth[]>> {
  const delivery = await send({ kind: 'weigh' });
  if (delivery.kind !== 'weigh') throw new Error(`Unexpected delivery: ${delivery.kind}`);
  return delivery.outcome;
}

/** Numbers of the engines of the study opened last, or of the air; at once. */
export async function tellNumbers(asks: readonly Ask[]): Promise<readonly Told[]> {
  const delivery = await send({ kind: 'tell', asks });
  if (delivery.kind !== 'tell') throw new Error(`Unexpected delivery: ${delivery.kind}`);
  return delivery.told;
}

/** The text with these changes, comments kept; or why the result would be no valid study. */
export async function editText(text: string, edits: readonly Edit[]): Promise<EditOutcome> {
  const delivery = await send({ kind: 'edit', text, edits });
  if (delivery.kind !== 'edit') throw new Error(`Unexpected delivery: ${delivery.kind}`);
  return delivery.outcome;
}
