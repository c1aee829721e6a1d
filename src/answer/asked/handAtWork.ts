/** A hand in another thread, seen from there. */

import { ProblemError } from '../../numerics/problem.ts';
import type { Study } from '../../study/model.ts';
import { gatherMaterials } from '../materials.ts';
import type { DataShelf } from '../shelf.ts';
import type { HandAnswer, HandOrder } from './farHand.ts';
import type { Ask, Told } from './model.ts';
import { workmate } from './workmate.ts';

/** Other work that a hand can do, by name. @param data as the {@link Job} brings it */
export type HandJobs = Readonly<Record<string, (study: Study, data: unknown) => unknown>>;

export interface HandSurroundings {
  readonly shelf: DataShelf;
  /** Sends back what was found. */ post(this: void, answer: HandAnswer): void;
  /** Lets what has come in meanwhile be heard: between two pieces, work not begun can still be taken back. */
  letHear(this: void): Promise<void>;
  readonly jobs: HandJobs;
}

type WorkOrder = Extract<HandOrder, { kind: 'work' | 'job' }>;

/** Give each order to this; work is done in the order in which it comes. */
export function handAtWork({ shelf, post, letHear, jobs }: HandSurroundings): (order: HandOrder) => void {
  const lists = new Map<number, readonly Ask[]>();
  let study: Study | null = null;
  let mate: Promise<ReturnType<typeof workmate>> | null = null;
  let queue: WorkOrder[] = [];
  let working = false;

  async function work(order: WorkOrder): Promise<Found> {
    if (order.kind === 'job') {
      const { name, data } = order.job;
      const does = jobs[name];
      if (study === null || does === undefined) throw new Error(`no study yet, or no such work: ${name}`);
      return { kind: 'done', result: does(study, data) };
    }
    const list = lists.get(order.asks);
    if (mate === null || list === undefined) throw new Error('an order came before its study or its asks');
    return { kind: 'told', told: (await mate)(list, order.point) };
  }

  async function workThrough(): Promise<void> {
    working = true;
    for (let next = queue.shift(); next !== undefined; next = queue.shift()) {
      const { epoch, order } = next;
      post({ epoch, order, ...(await work(next).catch(failed)) });
      await letHear();
    }
    working = false;
  }

  return (order) => {
    if (order.kind === 'study') {
      // Nobody waits for what belongs to the study before.
      queue = [];
      lists.clear();
      study = order.study;
      mate = gatherMaterials(order.study.engines, shelf).then((materials) =>
        workmate(order.study, materials),
      );
      // Told with the first work that waits for it.
      mate.catch(() => undefined);
    } else if (order.kind === 'asks') {
      lists.set(order.asks, order.list);
    } else if (order.kind === 'work' || order.kind === 'job') {
      queue.push(order);
      if (!working) void workThrough();
    } else {
      const { epoch, order: number } = order;
      const others = queue.filter((each) => each.epoch !== epoch || each.order !== number);
      if (others.length < queue.length) post({ epoch, order: number, kind: 'dropped' });
      queue = others;
    }
  };
}

type Found =
  | { readonly kind: 'told'; readonly told: readonly Told[] }
  | { readonly kind: 'done'; readonly result: unknown };
type Failed =
  | { readonly kind: 'problem'; readonly problem: ProblemError['problem'] }
  | { readonly kind: 'fault'; readonly message: string };

const failed = (error: unknown): Failed =>
  error instanceof ProblemError
    ? { kind: 'problem', problem: error.problem }
    : { kind: 'fault', message: String(error) };
