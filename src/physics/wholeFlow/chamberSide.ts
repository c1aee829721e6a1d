/** Where the gas comes in: at rest in the chamber, what it is once it has expanded to a pressure, as a table. */

import type { SideKind } from '../euler/index.ts';
import type { Expansion } from '../gas/index.ts';

/** Places between the chamber's pressure and this share of it. */
const STEPS = 32;
const LOWEST_SHARE = 0.5;

/**
 * (h₀ − h)/(p₀ − p) and ρ are smooth up to the chamber's own pressure; between the places straight lines.
 */
export function chamberSide(expansion: Expansion): SideKind {
  const { chamber } = expansion;
  const p0 = chamber.pressure;
  const step = (1 - LOWEST_SHARE) / STEPS;
  const states = Array.from({ length: STEPS }, (_, k) => expansion.atPressure(p0 * (1 - (k + 1) * step)));
  const drops = states.map(({ enthalpy, pressure }) => (chamber.enthalpy - enthalpy) / (p0 - pressure));
  const densities = [chamber.density, ...states.map(({ density }) => density)];
  const perPressure = [1 / chamber.density, ...drops];
  const read = (of: readonly number[], share: number): number => {
    const s = (1 - share) / step;
    const k = Math.min(STEPS - 1, Math.max(0, Math.floor(s)));
    return of[k]! + (s - k) * (of[k + 1]! - of[k]!);
  };
  return {
    is: 'reservoir',
    highest: p0,
    share: 1,
    at: (pressure) => {
      // The flow comes in slower than sound: it never has expanded further than this.
      const share = Math.max(LOWEST_SHARE, pressure / p0);
      return {
        density: read(densities, share),
        speed: Math.sqrt(Math.max(0, 2 * read(perPressure, share) * (p0 - share * p0))),
      };
    },
  };
}
