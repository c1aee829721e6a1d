/** Payload of a two-stage rocket by Tsiolkovsky's equation alone, for checks: no flight is computed. */

export interface PlainStage {
  /** Specific impulse [s] */ readonly impulse: number;
  /** [kg] */ readonly propellant: number;
  readonly dry: number;
}

/**
 * Speeds that real two-stage vehicles need to a low orbit, gravity, drag and steering counted and the turning Earth taken off
 * [m/s]: 8814 to 9267 (R. Humble, G. Henry, W. Larson, Space Propulsion Analysis and Design, 1995, from memory), rounded outwards.
 */
export const SPEEDS_NEEDED = [8700, 9500] as const;

/** Payload [kg] for which both stages together give this speed; what else the first stage lifts besides the second in `extra`. */
export function payloadFor(
  speed: number,
  [first, second]: readonly [PlainStage, PlainStage],
  extra = 0,
): number {
  const gained = (payload: number): number => {
    const last = second.dry + payload;
    const above = last + second.propellant;
    const below = above + extra + first.dry;
    return (
      9.80665 *
      (first.impulse * Math.log((below + first.propellant) / below) + second.impulse * Math.log(above / last))
    );
  };
  let [low, high] = [-second.dry + 1, 100_000];
  for (let i = 0; i < 80; i++) {
    const middle = 0.5 * (low + high);
    if (gained(middle) > speed) low = middle;
    else high = middle;
  }
  return 0.5 * (low + high);
}
