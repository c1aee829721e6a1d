/** The worker seen from the page: reading, editing and solving studies off the main thread. It starts when it is first needed. */

import type { Ask, Told } from '../../../answer/asked/model.ts';
import type { VehicleWorth } from '../../../answer/worth/index.ts';
import type { Outcome } from '../../../numerics/problem.ts';
import type { Flights } from '../../solved/solvedStudy.ts';
import type { Adopted, Delivery, Edit, EditOutcome, Errand, OpenOutcome, Order } from './messages.ts';
import { nextTask } from './nextTask.ts';

type Settle = { resolve: (delivery: Delivery) => void; reject: (error: Error) => void };

let worker: Worker | null = null;
/** The study that the server has answered; told to the worker before anything else. */
let adopted: Adopted | null = null;
let count = 0;
const waiting = new Map<number, Settle>();

function send(errand: Errand): Promise<Delivery> {
  if (worker === null) {
    worker = start();
    if (adopted !== null) void post(worker, { kind: 'adopt', from: adopted });
  }
  return post(worker, errand);
}

function post(to: Worker, errand: Errand): Promise<Delivery> {
  const number = ++count;
  return new Promise((resolve, reject) => {
    waiting.set(number, { resolve, reject });
    to.postMessage({ number, errand } satisfies Order);
  });
}

function start(): Worker {
  const fresh = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
  fresh.addEventListener('message', ({ data }: MessageEvent<Delivery>) => {
    const settle = waiting.get(data.number);
    waiting.delete(data.number);
    if (data.kind === 'open' && data.isMoreToCome) awaitLater(data.number);
    if (data.kind === 'failed') settle?.reject(new Error(data.message));
    else settle?.resolve(data);
  });
  fresh.addEventListener('error', (event) => {
    for (const { reject } of waiting.values()) reject(new Error(event.message || 'The worker failed.'));
    waiting.clear();
  });
  return fresh;
}

/** What follows on a study whose engines have come. */
const later = new Map<number, Promise<Delivery>>();

function awaitLater(number: number): void {
  const delivery = new Promise<Delivery>((resolve, reject) => waiting.set(number, { resolve, reject }));
  later.set(number, delivery);
  // Whether it fails is looked at by who waits for it.
  delivery.catch(() => undefined).finally(() => later.delete(number));
}

async function flightsOf(delivery: Promise<Delivery> | undefined): Promise<Flights | null> {
  const come = await delivery;
  if (come === undefined || come.kind === 'given up') return null;
  if (come.kind === 'flights') return come.flights;
  throw new Error(`Unexpected delivery: ${come.kind}`);
}

/** The study on screen is the server's answer: the worker need not work it out before something asks for its engines. */
export function adoptAnswer(from: Adopted): void {
  adopted = from;
}

/** Something will need the worker and its engines before long. */
export function warmUp(): void {
  if (worker === null && adopted !== null) send({ kind: 'warm up' }).catch(reportError);
}

/** What comes of a text: at once what is known of its engines, later what they lift. */
export interface Opened {
  readonly outcome: OpenOutcome;
  /** Null where there are none to come, or a later text has overtaken this one. */
  readonly flights: Promise<Flights | null>;
}

/** Reads and solves a study text; null where a later one has overtaken it. */
export async function openText(text: string): Promise<Opened | null> {
  const order = send({ kind: 'open', text });
  const number = count;
  const delivery = await order;
  if (delivery.kind === 'given up') return null;
  if (delivery.kind !== 'open') throw new Error(`Unexpected delivery: ${delivery.kind}`);
  const flights = flightsOf(later.get(number));
  flights.catch(() => undefined);
  // To take in so much and to draw it are two pieces of work: neither holds the page for long.
  await nextTask();
  return { outcome: delivery.outcome, flights };
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
