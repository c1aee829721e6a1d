/** Where two engines tie on the way up. */

import { figuresAtAltitude } from '../conditions.ts';
import type { EngineSolution } from '../solution.ts';

/** Above it the air adds nothing that a tie could hang on [m]. */
const HIGHEST = 100_000;
const STEP = 500;
/** Two specific impulses closer than this share are the same number: below the accuracy of the gas model. */
const SAME = 1e-7;

export interface AltitudeProfile {
  /** Rising [m]. */ readonly altitudes: readonly number[];
  /** Other minus base as a share of base; null where either has no value; 0 where they are the same. */
  readonly leads: readonly (number | null)[];
}

/** How far the other engine's specific impulse leads the base's, over the whole climb. */
export function leadOverAltitude(base: EngineSolution, other: EngineSolution): AltitudeProfile {
  const altitudes = Array.from({ length: HIGHEST / STEP + 1 }, (_, i) => i * STEP);
  return { altitudes, leads: altitudes.map((z) => leadAt(base, other, z)) };
}

function leadAt(base: EngineSolution, other: EngineSolution, altitude: number): number | null {
  const b = figuresAtAltitude(base, altitude).figures.specificImpulse;
  const o = figuresAtAltitude(other, altitude).figures.specificImpulse;
  if (b === null || o === null) return null;
  const lead = (o - b) / Math.abs(b);
  return Math.abs(lead) < SAME ? 0 : lead;
}

/** Altitudes [m] where the lead changes hands, to within a metre. */
export function crossingsOf(
  base: EngineSolution,
  other: EngineSolution,
  profile: AltitudeProfile,
): readonly number[] {
  const crossings: number[] = [];
  let last: { altitude: number; lead: number } | null = null;
  profile.altitudes.forEach((altitude, i) => {
    const lead = profile.leads[i] ?? null;
    if (lead === null) {
      last = null;
      return;
    }
    if (lead === 0) return;
    if (last !== null && Math.sign(lead) !== Math.sign(last.lead)) {
      crossings.push(crossingBetween(base, other, last.altitude, altitude));
    }
    last = { altitude, lead };
  });
  return crossings;
}

/** Bisection on the sign of the lead; a span of 500 m halved 10 times is under a metre. */
function crossingBetween(base: EngineSolution, other: EngineSolution, low: number, high: number): number {
  const signLow = Math.sign(leadAt(base, other, low) ?? 0);
  while (high - low > 0.5) {
    const middle = (low + high) / 2;
    const lead = leadAt(base, other, middle);
    if (lead === 0) return middle;
    if (lead !== null && Math.sign(lead) === signLow) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Lowest altitude [m] from which the gas fills the nozzle up to space; 0: from the pad; null: never below 100 km. */
export function fullFrom(solution: EngineSolution): number | null {
  const attached = (altitude: number): boolean => {
    const state = figuresAtAltitude(solution, altitude).at.flow.state;
    return state === 'full' || state === 'near the limit';
  };
  if (!attached(HIGHEST)) return null;
  if (attached(0)) return 0;
  let low = 0;
  let high = HIGHEST;
  while (high - low > 1) {
    const middle = (low + high) / 2;
    if (attached(middle)) high = middle;
    else low = middle;
  }
  return high;
}
