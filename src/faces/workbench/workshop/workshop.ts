/** The worker seen from the page: reading, editing and solving studies off the main thread. It starts when it is first needed. */

import type { Ask, Told } from '../../../answer/asked/model.ts';
import type { VehicleWorth } from '../../../answer/worth/index.ts';
import type { Outcome } from '../../../numerics/problem.ts';
import type { SolvedPiece } from '../../solved/solvedPiece.ts';
import type { Flights, SolvedStudy } from '../../solved/solvedStudy.ts';
import type {
  Adopted,
  Delivery,
  Edit,
  EditOutcome,
  Errand,
  OpenOutcome,
  OpenPiece,
  Order,
} from './messages.ts';
import { studyInHand } from './studyInHand.ts';

type Settle = { resolve: (delivery: Delivery) => void; reject: (error: Error) => void };

let worker: Worker | null = null;
/** The study that the server has answered; told to the worker before anything else. */
let adopted: Adopted | null = null;
let count = 0;
const waiting = new Map<number, Settle>();
/** Who listens to the pieces of an order. */
const followers = new Map<number, (piece: SolvedPiece) => void>();
/** Each engine as it was told last, whatever became of the text that it was told of. */
const toldEngines = new Map<string, Extract<SolvedPiece, { kind: 'engine' }>>();

/** The server's answer, or what the worker has opened last. */
const inHand = studyInHand();

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
    if (data.kind === 'piece') return follow(data.number, data.piece);
    const settle = waiting.get(data.number);
    waiting.delete(data.number);
    followers.delete(data.number);
    if (data.kind === 'open' && data.isMoreToCome) awaitLater(data.number);
    if (data.kind === 'failed') settle?.reject(new Error(data.message));
    else settle?.resolve(data);
  });
  fresh.addEventListener('error', (event) => {
    for (const { reject } of waiting.values()) reject(new Error(event.message || 'The worker failed.'));
    waiting.clear();
    followers.clear();
  });
  return fresh;
}

function follow(number: number, piece: OpenPiece): void {
  if (piece.kind === 'engine') toldEngines.set(piece.id, piece);
  const whole = piece.kind === 'same' ? toldEngines.get(piece.id) : piece;
  if (whole === undefined) throw new Error('An engine is the same that was never told.');
  followers.get(number)?.(whole);
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
export function adoptAnswer(from: Adopted, { answer, ladders }: SolvedStudy): void {
  adopted = from;
  // One that was asked for something earlier has begun without it.
  if (worker !== null) post(worker, { kind: 'adopt', from }).catch(reportError);
  inHand.take();
  for (const [id, engine] of Object.entries(answer.engines)) {
    const ladder = ladders[id];
    if (ladder === undefined || toldEngines.has(id)) continue;
    toldEngines.set(id, { kind: 'engine', id, answer: engine, ladder });
  }
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

/** Reads and solves a study text; null where a later one has overtaken it. @param tell of its pieces as they come */
export async function openText(text: string, tell: (piece: SolvedPiece) => void): Promise<Opened | null> {
  const order = send({ kind: 'open', text });
  const number = count;
  followers.set(number, tell);
  const delivery = await order.catch((error: unknown) => {
    // Who waits for a study is told that there is none.
    inHand.take();
    throw error;
  });
  if (delivery.kind === 'given up') return null;
  inHand.take();
  if (delivery.kind !== 'open') throw new Error(`Unexpected delivery: ${delivery.kind}`);
  const flights = flightsOf(later.get(number));
  flights.catch(() => undefined);
  return { outcome: delivery.outcome, flights };
}

/** What the other engine is worth to the vehicles of the study opened last. */
export async function weighVehicles(): Promise<Outcome<readonly VehicleWorth[]>> {
  const delivery = await send({ kind: 'weigh' });
  if (delivery.kind !== 'weigh') throw new Error(`Unexpected delivery: ${delivery.kind}`);
  return delivery.outcome;
}

/** Numbers of the engines of the study opened last, or of the air: at once, or as soon as there is a study. */
export async function tellNumbers(asks: readonly Ask[]): Promise<readonly Told[]> {
  if (asks.some(({ engine }) => engine !== null)) await inHand.come();
  const delivery = await send({ kind: 'tell', asks });
  if (delivery.kind !== 'tell') throw new Error(`Unexpected delivery: ${delivery.kind}`);
  return delivery.told;
}

/** A number of an engine of another study, with this text; it is solved for it. */
export async function tellNumberOf(text: string, ask: Ask): Promise<Told> {
  const delivery = await send({ kind: 'tell of', text, ask });
  const [told] = delivery.kind === 'tell' ? delivery.told : [];
  if (told === undefined) throw new Error(`Unexpected delivery: ${delivery.kind}`);
  return told;
}

/** The text with these changes, comments kept; or why the result would be no valid study. */
export async function editText(text: string, edits: readonly Edit[]): Promise<EditOutcome> {
  const delivery = await send({ kind: 'edit', text, edits });
  if (delivery.kind !== 'edit') throw new Error(`Unexpected delivery: ${delivery.kind}`);
  return delivery.outcome;
}
