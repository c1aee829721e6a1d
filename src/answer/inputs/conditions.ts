/** Surroundings, throttle and time of flight: what a question sets that no study states as an input. */

import { HIGHEST_ALTITUDE, LOWEST_ALTITUDE } from '../../physics/air/index.ts';
import { CURVE_TOP } from '../conditions.ts';
import type { ConditionEntry } from './model.ts';

export const settableConditions: readonly ConditionEntry[] = [
  {
    name: 'altitude',
    label: 'altitude',
    quantity: 'altitude',
    lowest: LOWEST_ALTITUDE,
    highest: HIGHEST_ALTITUDE,
    openBelow: false,
    range: '−5 km to 1000 km',
    sweep: { from: 0, to: CURVE_TOP, spacing: 'even' },
  },
  {
    name: 'ambientPressure',
    label: 'outside pressure',
    quantity: 'ambientPressure',
    lowest: 0,
    highest: null,
    openBelow: false,
    range: '0 Pa or more',
    sweep: { from: 0, to: 101_325, spacing: 'even' },
  },
  {
    name: 'throttle',
    label: 'throttle',
    quantity: 'separation.throttle.share',
    lowest: 0,
    highest: 1,
    openBelow: true,
    range: 'more than 0 % and up to 100 %',
    sweep: { from: 0.2, to: 1, spacing: 'even' },
  },
  {
    name: 'time',
    label: 'time since lift-off',
    quantity: 'flight.points.time',
    lowest: 0,
    highest: null,
    openBelow: false,
    range: '0 s or more',
    sweep: { from: 0, to: 120, spacing: 'even' },
  },
];
