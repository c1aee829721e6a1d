import { ProblemError } from '../../numerics/problem.ts';

/** Largest area ratio that the nozzle models accept; built nozzles stay below 400. */
export const LARGEST_AREA_RATIO = 1000;

/**
 * Refuse an area ratio A_exit/A_throat [–] that is not above 1 and at most 1000.
 *
 * @throws ProblemError `area-ratio-outside-range`
 */
export function requireAreaRatio(areaRatio: number): void {
  if (areaRatio > 1 && areaRatio <= LARGEST_AREA_RATIO) return;
  throw new ProblemError({
    code: 'area-ratio-outside-range',
    what: `The nozzle's area ratio is ${areaRatio}; it has to be above 1 and at most ${LARGEST_AREA_RATIO}.`,
    why: 'Only a wall that widens after the throat makes the gas supersonic.',
    mend: 'Give exit area over throat area, for example 16 for a booster or 80 for an upper stage.',
    where: 'nozzle.areaRatio',
    facts: { areaRatio, largest: LARGEST_AREA_RATIO },
  });
}
