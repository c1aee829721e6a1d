/** In a worker of an isolated page: a field stepped by this worker and by a hand of its own, beside the same by one. */

import type { HandWork, StepTeam } from '../../src/physics/euler/index.ts';
import { burst } from '../physics/euler/kernel/kernelCases.ts';

const hand = new Worker('/hand.js');
hand.onmessage = () => {
  const team: StepTeam = {
    hands: 1,
    fewest: 0,
    patience: 20_000,
    leave: null,
    lost: null,
    send: (work: HandWork) => hand.postMessage(work),
  };
  const told = ([64, 32] as const).map((bits) => ({
    bits,
    one: burst(bits, 40, true),
    two: burst(bits, 40, true, team),
    // Shared: the hands were at it.
    shared: team.leave !== null,
  }));
  postMessage(told);
};
