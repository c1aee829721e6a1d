/**
 * The push on the wall behind the place where the gas has left it.
 *
 * Outside air drawn into the ring between jet and wall keeps the pressure there a little below ambient:
 * p/p_a = 0.95 to 1.0 in free separation (plateau; from memory of the nozzle literature of references such as R. Stark,
 * AIAA 2013-3840, and S. Kalt, D. Badal, J. Spacecraft & Rockets 2(3), 1965). The ring widens downstream and the
 * suction fades: it is taken up to twice the area at the place, ambient pressure further down (ours, no source; without that bound a wide
 * nozzle, barely blown, would be sucked backwards by more than its jet pushes).
 */

import type { WallPlace } from './model.ts';

/** Pressure behind the place over ambient [–]: best value in the middle of the published span. */
export const PLATEAU = { low: 0.95, best: 0.975, high: 1 } as const;

/** Area up to which the suction reaches, over the area at the place [–]. */
const SUCTION_REACH = 2;

/**
 * ∫ p dε over the wall behind the place [Pa], ε area over throat area.
 *
 *   p_a (ε_lip − ε_s) − (1 − κ) p_a [ min(2 ε_s, ε_lip) − ε_s ]
 *
 * @param plateau κ, pressure there over ambient [–]
 */
export function pushOfDeadAir(
  { areaRatio }: WallPlace,
  lipAreaRatio: number,
  ambientPressure: number,
  plateau: number,
): number {
  const reach = Math.min(SUCTION_REACH * areaRatio, lipAreaRatio) - areaRatio;
  return ambientPressure * (lipAreaRatio - areaRatio - (1 - plateau) * reach);
}
