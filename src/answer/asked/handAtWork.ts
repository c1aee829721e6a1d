/** A hand in another thread, seen from there. */

import { ProblemError } from '../../numerics/problem.ts';
import { gatherMaterials } from '../materials.ts';
import type { DataShelf } from '../shelf.ts';
import type { HandAnswer, HandOrder } from './farHand.ts';
import type { Ask, Told } from './model.ts';
import { workmate } from './workmate.ts';

export interface HandSurroundings {
  readonly shelf: DataShelf;
  /** Sends back what was found. */ post(this: void, answer: HandAnswer): void;
  /** Lets what has come in meanwhile be heard: between two pieces, work not begun can still be taken back. */
  letHear(this: void): Promise<void>;
}

type WorkOrder = Extract<HandOrder, { kind: 'work' }>;

/** Give each order to this; work is done in the order in which it comes. */
export function handAtWork({ shelf, post, letHear }: HandSurroundings): (order: HandOrder) => void {
  const lists = new Map<number, readonly Ask[]>();
  let mate: Promise<ReturnType<typeof workmate>> | null = null;
  let queue: WorkOrder[] = [];
  let working = false;

  async function work({ asks, point }: WorkOrder): Promise<readonly Told[]> {
    const list = lists.get(asks);
    if (mate === null || list === undefined) throw new Error('an order came before its study or its asks');
    return (await mate)(list, point);
  }

  async function workThrough(): Promise<void> {
    working = true;
    for (let next = queue.shift(); next !== undefined; next = queue.shift()) {
      const { epoch, order } = next;
      post({ epoch, order, ...(await work(next).then(found, failed)) });
      await letHear();
    }
    working = false;
  }

  return (order) => {
    if (order.kind === 'study') {
      // Nobody waits for what belongs to the study before.
      queue = [];
      lists.clear();
      mate = gatherMaterials(order.study.engines, shelf).then((materials) =>
        workmate(order.study, materials),
      );
      // Told with the first work that waits for it.
      mate.catch(() => undefined);
    } else if (order.kind === 'asks') {
      lists.set(order.asks, order.list);
    } else if (order.kind === 'work') {
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

type Found = { readonly kind: 'told'; readonly told: readonly Told[] };
type Failed =
  | { readonly kind: 'problem'; readonly problem: ProblemError['problem'] }
  | { readonly kind: 'fault'; readonly message: string };

const found = (told: readonly Told[]): Found => ({ kind: 'told', told });

const failed = (error: unknown): Failed =>
  error instanceof ProblemError
    ? { kind: 'problem', problem: error.problem }
    : { kind: 'fault', message: String(error) };
