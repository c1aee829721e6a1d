/** A hand in another thread, seen from there. */

import { ProblemError } from '../../numerics/problem.ts';
import { gatherMaterials } from '../materials.ts';
import type { DataShelf } from '../shelf.ts';
import type { Point } from './crew.ts';
import type { HandAnswer, HandOrder } from './farHand.ts';
import type { Ask, Told } from './model.ts';
import { workmate } from './workmate.ts';

/** Give each order to this; what it finds is sent back through `post`. */
export function handAtWork(shelf: DataShelf, post: (answer: HandAnswer) => void): (order: HandOrder) => void {
  const lists = new Map<number, readonly Ask[]>();
  let mate: Promise<ReturnType<typeof workmate>> | null = null;

  async function work(asks: number, point: Point): Promise<readonly Told[]> {
    const list = lists.get(asks);
    if (mate === null || list === undefined) throw new Error('an order came before its study or its asks');
    return (await mate)(list, point);
  }

  return (order) => {
    if (order.kind === 'study') {
      lists.clear();
      mate = gatherMaterials(order.study.engines, shelf).then((materials) =>
        workmate(order.study, materials),
      );
      // Told with the first work that waits for it.
      mate.catch(() => undefined);
    } else if (order.kind === 'asks') {
      lists.set(order.asks, order.list);
    } else {
      const { epoch, order: number } = order;
      work(order.asks, order.point).then(
        (told) => post({ epoch, order: number, kind: 'told', told }),
        (error: unknown) =>
          post(
            error instanceof ProblemError
              ? { epoch, order: number, kind: 'problem', problem: error.problem }
              : { epoch, order: number, kind: 'fault', message: String(error) },
          ),
      );
    }
  };
}
