import type { StagePropulsion, Vehicle } from './model.ts';

/** Share of the limit of dynamic pressure at which throttling sets in. */
const SETS_IN_AT = 0.9;

/**
 * Share of the full flow that keeps acceleration and dynamic pressure below the vehicle's limits, no lower than the engine's
 * lowest throttle.
 *
 *   acceleration:      s = (a_max m + F_vac − F(p_a))/F_vac, from s F_vac − (F_vac − F) = a_max m
 *   dynamic pressure:  from full flow at 0.9 q_max down to the lowest throttle at q_max, along a straight line
 *
 * The second is a rule of steering of our own: a limit is kept if the engine can be throttled far enough, and reached softly.
 *
 * @param mass [kg]  @param thrust full thrust here [N]  @param dynamicPressure [Pa]
 */
export function throttleFor(
  { mostAcceleration, mostDynamicPressure }: Pick<Vehicle, 'mostAcceleration' | 'mostDynamicPressure'>,
  { vacuumThrust, lowestThrottle }: StagePropulsion,
  mass: number,
  thrust: number,
  dynamicPressure: number,
): number {
  let share = 1;
  if (mostAcceleration !== undefined) {
    const allowed = (mostAcceleration * mass + vacuumThrust - thrust) / vacuumThrust;
    if (allowed < share) share = allowed;
  }
  if (mostDynamicPressure !== undefined) {
    const into = (dynamicPressure / mostDynamicPressure - SETS_IN_AT) / (1 - SETS_IN_AT);
    const allowed = 1 - (1 - lowestThrottle) * into;
    if (allowed < share) share = allowed;
  }
  return share < lowestThrottle ? lowestThrottle : share;
}
