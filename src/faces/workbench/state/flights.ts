/** What the engines do for the vehicles of the study: they come after the engines. */

import { computed, effect, signal } from '@preact/signals';
import type { StudyAnswer } from '../../../answer/model.ts';
import { withVehicles } from '../../../answer/withVehicles.ts';
import type { Flights, SolvedStudy } from '../../solved/solvedStudy.ts';
import { solved } from './studyStore.ts';

const come = signal<{ readonly of: SolvedStudy; readonly flights: Flights } | null>(null);

/** Null: they are being flown. */
export const flights = computed(
  (): Flights | null =>
    solved.value?.vehicles ?? (come.value?.of === solved.value ? (come.value?.flights ?? null) : null),
);

/** Later than their study. */
export function flightsCome(of: SolvedStudy, told: Flights): void {
  come.value = { of, flights: told };
}

/** Those that are known, else the last ones that were. */
export const flightsInSight = signal<Flights | null>(null);
effect(() => {
  if (flights.value !== null) flightsInSight.value = flights.value;
});

/** All of it; null while something is still to come. */
export const wholeAnswer = computed((): StudyAnswer | null =>
  solved.value === null || flights.value === null ? null : withVehicles(solved.value.answer, flights.value),
);
