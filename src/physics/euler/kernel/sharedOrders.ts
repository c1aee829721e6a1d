/** The orders of a field, carried out by one thread or by a team. */

import { type Problem, ProblemError } from '../../../numerics/problem.ts';
import type { FlowKernel } from './flowKernel.ts';
import { callsOf } from './kernelCalls.ts';
import { type FieldPlaces, shareOf } from './share.ts';
import { type Lot, ORDER, type Ordered, type Talk } from './talk.ts';

const NONE: Lot = { id: -1, blocks: [], threads: 0 };

/** One that has an order carried out by all that share its lot, this thread among them. */
export function sharedOrders(
  { bits, module, team }: FlowKernel,
  memory: WebAssembly.Memory,
  places: FieldPlaces,
  talk: Talk,
): (order: Ordered) => void {
  const own = shareOf(places, callsOf({ bits, module }, memory), talk, 0);
  if (team === null || places.threads === 1) return own;
  const give = (order: Ordered): void => {
    talk.give(order);
    if (order.kind !== ORDER.leave) own(order);
    const ended = talk.await(team.patience);
    if (ended === 'done') return;
    team.lost = handLost(ended);
    throw new ProblemError(team.lost);
  };
  const leave = (): void => give({ kind: ORDER.leave, first: 0, second: 0, courant: 0, lot: NONE });
  return (order) => {
    if (order.lot.threads === 1) return own(order);
    if (team.lost !== null) throw new ProblemError(team.lost);
    if (team.leave !== leave) {
      team.leave?.();
      for (let hand = 1; hand <= team.hands; hand++)
        team.send({ ...places, bits, module, memory, hand, after: talk.count() });
      team.leave = leave;
    }
    give(order);
  };
}

const LOST = 'flow-thread-lost';

/** A field that lost one of its threads may be half stepped: it is not as it was before, as one is that broke. */
export const isThreadLost = ({ code }: Problem): boolean => code === LOST;

function handLost(ended: 'failed' | 'lost'): Problem {
  return {
    code: LOST,
    what: `A thread that took a share of the flow field ${ended === 'failed' ? 'stopped with an error' : 'answers no more'}.`,
    why: 'The field may be half stepped, so it is not told.',
    mend: 'Ask again, or by one thread alone.',
  };
}
