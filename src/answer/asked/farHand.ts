/** A hand in another thread, seen from here, over any channel that carries plain data. */

import { type Problem, ProblemError } from '../../numerics/problem.ts';
import type { Study } from '../../study/model.ts';
import type { Point } from './crew.ts';
import type { Hand } from './crewOf.ts';
import type { Ask, Told } from './model.ts';

/** What goes out. Asks travel once; later orders name them by their number. */
export type HandOrder =
  | { readonly kind: 'study'; readonly study: Study }
  | { readonly kind: 'asks'; readonly asks: number; readonly list: readonly Ask[] }
  | {
      readonly kind: 'work';
      readonly epoch: number;
      readonly order: number;
      readonly asks: number;
      readonly point: Point;
    }
  /** That work is not wanted any more, unless it has begun. */
  | { readonly kind: 'drop'; readonly epoch: number; readonly order: number };

/** What comes back. */
export type HandAnswer = { readonly epoch: number; readonly order: number } & (
  | { readonly kind: 'told'; readonly told: readonly Told[] }
  | { readonly kind: 'problem'; readonly problem: Problem }
  /** Taken back before it had begun. */
  | { readonly kind: 'dropped' }
  /** A fault of the program. */
  | { readonly kind: 'fault'; readonly message: string }
);

/** The near end. */
export interface FarHand extends Hand {
  /** Hands in what came back. */ hear(answer: HandAnswer): void;
  /** Ends all that is still waited for, because the other thread has died. */ fail(error: Error): void;
}

/** @param epoch tells this study's answers from late ones of a study that the same thread had before */
export function farHand(study: Study, post: (order: HandOrder) => void, epoch = 0): FarHand {
  const waiting = new Map<number, { resolve(told: readonly Told[]): void; reject(error: Error): void }>();
  const sent = new Map<readonly Ask[], number>();
  let orders = 0;
  post({ kind: 'study', study });

  function numberOf(list: readonly Ask[]): number {
    const known = sent.get(list);
    if (known !== undefined) return known;
    sent.set(list, sent.size);
    post({ kind: 'asks', asks: sent.size - 1, list });
    return sent.size - 1;
  }

  return {
    // While one answer is on its way here and the next order on its way there, the thread has something to do.
    ahead: 1,
    work(list, point, signal) {
      const asks = numberOf(list);
      const order = orders++;
      const drop = (): void => post({ kind: 'drop', epoch, order });
      signal?.addEventListener('abort', drop, { once: true });
      return new Promise<readonly Told[]>((resolve, reject) => {
        waiting.set(order, { resolve, reject });
        post({ kind: 'work', epoch, order, asks, point });
      }).finally(() => signal?.removeEventListener('abort', drop));
    },
    hear(answer) {
      if (answer.epoch !== epoch) return;
      const waiter = waiting.get(answer.order);
      waiting.delete(answer.order);
      if (answer.kind === 'told') waiter?.resolve(answer.told);
      else if (answer.kind === 'dropped') waiter?.reject(new Error('the work was taken back'));
      else if (answer.kind === 'problem') waiter?.reject(new ProblemError(answer.problem));
      else waiter?.reject(new Error(answer.message));
    },
    fail(error) {
      for (const waiter of waiting.values()) waiter.reject(error);
      waiting.clear();
    },
  };
}
