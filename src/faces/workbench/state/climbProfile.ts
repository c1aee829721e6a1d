/** The climb from the pad to vacuum as a function of time. */

import { topOfScale } from './scale.ts';

/** Ease at both ends [s]. */
const ease = 0.4;

/**
 * Altitude [km] at `time` of a climb that lasts `duration` [s]: linear, with a parabola of 0.4 s at each end;
 * `Infinity` once the top is reached.
 */
export function climbAltitude(time: number, duration: number): number {
  if (time <= 0) return 0;
  if (time >= duration) return Number.POSITIVE_INFINITY;
  const speed = topOfScale / (duration - ease);
  if (time < ease) return (speed * time * time) / (2 * ease);
  const left = duration - time;
  if (left < ease) return topOfScale - (speed * left * left) / (2 * ease);
  return speed * (time - ease / 2);
}

/** The steps taken, one a second, where motion is to be reduced [km]. */
export const climbSteps: readonly number[] = [0, 1, 2, 5, 10, 20, 40, Number.POSITIVE_INFINITY];

/** When a climb passes an altitude [s]; at the top it begins again. */
export function timeOfAltitude(kilometres: number, duration: number): number {
  if (!Number.isFinite(kilometres) || kilometres >= topOfScale || kilometres <= 0) return 0;
  return (kilometres * (duration - ease)) / topOfScale + ease / 2;
}
