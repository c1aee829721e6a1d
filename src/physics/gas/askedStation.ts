/** What may be asked of an expansion: a pressure, an area ratio, a Mach number. */

import { ProblemError } from '../../numerics/problem.ts';

/** @throws ProblemError outside 0…chamber pressure [Pa] */
export function requireStationPressure(pressure: number, chamberPressure: number): void {
  if (pressure > 0 && pressure <= chamberPressure * (1 + 1e-12)) return;
  throw new ProblemError({
    code: 'station-pressure-outside',
    what: `A pressure of ${pressure} Pa is not between 0 and the chamber pressure of ${chamberPressure} Pa.`,
    mend: 'Ask for a pressure that the flow passes through.',
    facts: { pressure, chamberPressure },
  });
}

/** @throws ProblemError below 1 */
export function requireStationAreaRatio(areaRatio: number): void {
  if (areaRatio >= 1 && Number.isFinite(areaRatio)) return;
  throw new ProblemError({
    code: 'area-ratio-below-one',
    what: Number.isFinite(areaRatio)
      ? `An area ratio of ${areaRatio} is below 1: no place in the nozzle is narrower than the throat.`
      : `An area ratio of ${areaRatio} is no number.`,
    mend: 'Give an area ratio of 1 or more.',
    facts: { areaRatio },
  });
}

/** Above this the gas before the throat stands still to the precision of its pressure. */
const LARGEST_SUBSONIC_AREA = 1000;

/** @throws ProblemError above {@link LARGEST_SUBSONIC_AREA} */
export function requireSubsonicArea(areaRatio: number): void {
  if (areaRatio <= LARGEST_SUBSONIC_AREA) return;
  throw new ProblemError({
    code: 'area-ratio-at-rest',
    what: `Before the throat, an area ratio of ${areaRatio} is more than ${LARGEST_SUBSONIC_AREA}: the gas all but stands still there.`,
    mend: `Use ${LARGEST_SUBSONIC_AREA} or less, or the state at rest.`,
    facts: { areaRatio, largest: LARGEST_SUBSONIC_AREA },
  });
}

/** @throws ProblemError below 0 */
export function requireStationMach(mach: number): void {
  if (mach >= 0 && Number.isFinite(mach)) return;
  throw new ProblemError({
    code: 'mach-invalid',
    what: `A Mach number of ${mach} has no meaning here.`,
    mend: 'Give a Mach number of 0 or more.',
    facts: { mach },
  });
}
