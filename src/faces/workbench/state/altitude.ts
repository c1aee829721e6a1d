/** The altitude at which one looks. */

import { computed, signal } from '@preact/signals';
import { topOfScale } from './scale.ts';

/** Altitudes a kilometre at which engines have rows once all of them are there. */
const FINEST = 10;

/** So many they have now. */
export const altitudeSteps = signal(FINEST);

/** Where one wants to look; see {@link altitude}. */
const asked = signal(0);

/**
 * Geometric altitude in kilometres, 0 to {@link topOfScale}; `Infinity` stands for vacuum. As long as not all rows of the engines
 * are there, the nearest at which they have one, so that what is told is told of the place beside it.
 */
export const altitude = computed(() =>
  altitudeSteps.value < FINEST && Number.isFinite(asked.value)
    ? Math.round(asked.value * altitudeSteps.value) / altitudeSteps.value
    : asked.value,
);

/** Altitudes a person sets are whole steps. */
export function setAltitude(kilometres: number): void {
  const bounded = kilometres < 0 ? 0 : kilometres > topOfScale ? Number.POSITIVE_INFINITY : kilometres;
  asked.value = Number.isFinite(bounded) ? Math.round(bounded * FINEST) / FINEST : bounded;
}

/** On the way of a climb, between the steps too. */
export function passAltitude(kilometres: number): void {
  asked.value = kilometres;
}
