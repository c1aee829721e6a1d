/** Threads that take the steps of a field together, in memory that they share. */

import type { Problem } from '../../../numerics/problem.ts';
import { callsOf } from './kernelCalls.ts';
import { type FieldPlaces, shareOf } from './share.ts';
import { ORDER, talkIn } from './talk.ts';

/** What a hand is sent, on which it is to call {@link workAsHand}. */
export interface HandWork extends FieldPlaces {
  readonly bits: 64 | 32;
  readonly module: WebAssembly.Module;
  readonly memory: WebAssembly.Memory;
  /** Its number, from 1; 0 is the thread that gives the orders. */ readonly hand: number;
  /** Orders given before. */ readonly after: number;
}

/** Handed in: starting threads is no business of the physics. One field after the other may use it. */
export interface StepTeam {
  /** Threads beside the one that gives the orders. */ readonly hands: number;
  /** To the hand of its number. */ send(work: HandWork): void;
  /** Fields of fewer cells, and of fewer than four times as many where blocks step apart, are stepped by one thread: waiting for each other would cost more. */ readonly fewest: number;
  /** [ms] to wait for a share of a step before a hand counts as lost. */ readonly patience: number;
  /** Leaves the field on which the hands work now; null: they are idle. */ leave: (() => void) | null;
  /** Why no step can be shared any more; null: all is well. */ lost: Problem | null;
}

/** Carries out the orders of a field until it is left; the thread does nothing else meanwhile. */
export function workAsHand({ bits, module, memory, hand, after, ...places }: HandWork): void {
  const talk = talkIn(memory, places.talk, places.blocks.length, places.threads);
  try {
    const share = shareOf(places, callsOf({ bits, module }, memory), talk, hand);
    for (let given = after; ; given++) {
      const order = talk.next(given);
      if (order.kind === ORDER.leave) break;
      share(order);
      talk.done();
    }
  } catch (error) {
    talk.fail();
    throw error;
  }
  talk.done();
}
