/** Where a nozzle of two modes goes over, as pressures and as altitudes. */

import { attempt } from '../numerics/problem.ts';
import { geometricAltitudeAtPressure } from '../physics/air/index.ts';
import type { ModeChange } from '../physics/nozzle/index.ts';
import { noAltitudeWith } from './absences.ts';
import type { AmbientPlace, ChangeAnswer, Reason } from './model.ts';

export function changeAnswer(change: ModeChange): ChangeAnswer {
  const between = (range: { readonly low: number; readonly high: number }) => ({
    low: placeOf(range.low),
    high: placeOf(range.high),
  });
  return {
    thick: change.thick.name,
    thin: change.thin.name,
    ...placeOf(change.ambientPressure),
    how: change.how,
    ...(change.band && { band: between(change.band) }),
    ...(change.back && { back: between(change.back) }),
    estimates: change.estimates.map(({ by, ambientPressure }) => ({ by, ...placeOf(ambientPressure) })),
  };
}

function placeOf(ambientPressure: number): AmbientPlace {
  const altitude = attempt(() => geometricAltitudeAtPressure(ambientPressure));
  return { ambientPressure, altitude: altitude.ok ? altitude.value : null };
}

/** Two altitudes [m], one on each side of the change, so that a curve shows it where it is; none without air. */
export function altitudesAtChange(change: ChangeAnswer | undefined): readonly number[] {
  return change === undefined || change.altitude === null
    ? []
    : [change.altitude - SIDE, change.altitude + SIDE];
}
/** [m] */
const SIDE = 1;

/** Why an altitude of the change is null. */
export function changeReasons(change: ChangeAnswer | undefined): readonly Reason[] {
  if (change === undefined) return [];
  const places: readonly (readonly [string, AmbientPlace])[] = [
    ['change', change],
    ...(['band', 'back'] as const).flatMap((key) => {
      const range = change[key];
      return range === undefined
        ? []
        : ([
            [`change.${key}.low`, range.low],
            [`change.${key}.high`, range.high],
          ] as const);
    }),
    ...change.estimates.map((place, i) => [`change.estimates[${i}]`, place] as const),
  ];
  return places
    .filter(([, { altitude }]) => altitude === null)
    .map(([path, { ambientPressure }]) => {
      const { why, mend } = noAltitudeWith(ambientPressure);
      return { path: `${path}.altitude`, reason: why, mend };
    });
}
