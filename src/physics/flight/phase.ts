/** One stretch of the flight under one law, up to the first of several events. */

import { findBracketedRoot } from '../../numerics/bracketedRoot.ts';
import { integrate } from '../../numerics/dormandPrince.ts';
import { type Drive, STATE_SIZE, slopeOf } from './forces.ts';

/** Happens where `value` rises through zero. */
export interface FlightEvent<Name extends string> {
  readonly name: Name;
  value(t: number, y: Float64Array): number;
}

export interface PhaseEnd<Name extends string> {
  /** Null: none happened before the time was up. */ readonly event: Name | null;
  readonly t: number;
  readonly y: Float64Array;
}

/** Relative error a step; the absolute one is in metres, radians, metres a second, kilograms. */
const RELATIVE = 1e-9;
const ABSOLUTE = [1e-3, 1e-10, 1e-6, 1e-4, 1e-4, 1e-6, 1e-6, 1e-6, 1e-6, 1];

/**
 * @param longestStep [s] short enough that no event can begin and end within one
 * @param onStep told the end of every step, for the record of the flight
 */
export function flyPhase<Name extends string>(
  drive: Drive,
  from: number,
  start: Float64Array,
  until: number,
  events: readonly FlightEvent<Name>[],
  longestStep: number,
  onStep: (t: number, y: Float64Array) => void,
): PhaseEnd<Name> {
  const into = new Float64Array(STATE_SIZE);
  const before = Float64Array.from(events, (event) => event.value(from, start));
  const after = new Float64Array(events.length);
  let happened: PhaseEnd<Name> | null = null;
  const end = integrate(
    slopeOf(drive),
    from,
    start,
    until,
    { relative: RELATIVE, absolute: ABSOLUTE, firstStep: 0.5, longestStep },
    (step) => {
      let rises = false;
      for (let i = 0; i < events.length; i++) {
        after[i] = events[i]!.value(step.to, step.end);
        rises ||= before[i]! < 0 && after[i]! >= 0;
      }
      if (!rises) {
        before.set(after);
        onStep(step.to, step.end);
        return undefined;
      }
      const crossed = events.flatMap((event, i) => {
        if (!(before[i]! < 0 && after[i]! >= 0)) return [];
        const valueAt = (t: number): number => {
          step.at(t, into);
          return event.value(t, into);
        };
        // The ends are known; only their signs count for the bracket.
        const { root } = findBracketedRoot(
          (t) => (t === step.from ? before[i]! : t === step.to ? after[i]! : valueAt(t)),
          step.from,
          step.to,
          { valueTolerance: 0, widthTolerance: 1e-10 * Math.max(1, step.to) },
        );
        return [{ name: event.name, t: root }];
      });
      const first = crossed.reduce((a, b) => (b.t < a.t ? b : a));
      step.at(first.t, into);
      happened = { event: first.name, t: first.t, y: into.slice() };
      return true;
    },
  );
  return happened ?? { event: null, t: end.t, y: end.y };
}
