/** The climb from the pad to vacuum as a function of time. */

import { eased, SOFT_END } from '../../../telling/clips/ease.ts';
import { topOfScale } from './scale.ts';

/**
 * Altitude [km] at `time` of a climb that lasts `duration` [s]: linear, with a parabola of 0.4 s at each end;
 * `Infinity` once the top is reached.
 */
export function climbAltitude(time: number, duration: number): number {
  if (time >= duration) return Number.POSITIVE_INFINITY;
  return topOfScale * eased(time / duration, 'soft ends', SOFT_END / duration);
}

/** The steps taken, one a second, where motion is to be reduced [km]. */
export const climbSteps: readonly number[] = [0, 1, 2, 5, 10, 20, 40, Number.POSITIVE_INFINITY];

/** When a climb passes an altitude [s]; at the top it begins again. */
export function timeOfAltitude(kilometres: number, duration: number): number {
  if (!Number.isFinite(kilometres) || kilometres >= topOfScale || kilometres <= 0) return 0;
  return (kilometres * (duration - SOFT_END)) / topOfScale + SOFT_END / 2;
}
