/** A field through time: in strips that take steps of their own where it has them, else all cells by the same steps. */

import { attempt, ProblemError } from '../../numerics/problem.ts';
import type { ApartFlow, Flow } from '../euler/index.ts';

/** Share of the longest stable step. */
const COURANT = 0.8;
/** How often a step that breaks is halved. */
const HALVINGS = 8;

/**
 * Yields at each of the times.
 * @param times [s] rising @param before told the time before each step: what lies beyond the sides may change
 * @throws ProblemError where the field breaks in the shortest step too
 */
export function* inTime(
  flow: Flow | ApartFlow,
  times: readonly number[],
  before: (time: number) => void = () => undefined,
): Generator<number> {
  for (const until of times) {
    while (flow.time < until) {
      before(flow.time);
      if ('advance' in flow && attempt(() => flow.advance(COURANT, until - flow.time, before)).ok) continue;
      // What broke has been told times that are to come yet.
      before(flow.time);
      takeStep(flow, until - flow.time);
    }
    yield until;
  }
}

function takeStep(flow: Flow, most: number): void {
  let seconds = Math.min(flow.stableStep(COURANT), most);
  // No sliver of a step at the end.
  if (seconds < most && 2 * seconds > most) seconds = most / 2;
  for (let halved = 0; ; halved++) {
    const taken = attempt(() => flow.step(seconds));
    if (taken.ok) return;
    if (halved === HALVINGS) throw new ProblemError(taken.problem);
    seconds /= 2;
  }
}
