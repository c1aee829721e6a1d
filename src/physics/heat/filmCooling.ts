/**
 * A film of coolant on the wall, first order: it takes up all heat on its way until it is as hot as the gas would make the wall.
 *
 *   η ṁ_f dh_f = h_g (T_aw − T_f) b ds,   T_f = T(p, h_f);   the wall then feels T_f in place of T_aw
 *
 * η is the share of the film that stays on the wall: 0.3 to 0.7 (NASA SP-125, from memory), 0.5 here. Beyond the table of the
 * coolant its last heat capacity is kept. Radiation is not held back. What the film costs in specific impulse is not taken off: some
 * 1 to 3 % for a film of 5 to 10 % of the fuel (from memory).
 */

import type { CoolantFluid } from './coolantFluid.ts';
import { gasCoefficient, type HotPoint } from './gasSide.ts';

/** Share of a film that does its work. */
export const FILM_EFFICIENCY = { value: 0.5, low: 0.3, high: 0.7 } as const;

export interface Film {
  readonly fluid: CoolantFluid;
  /** [kg/s] on this wall */ readonly massFlow: number;
  /** [K] where it leaves the injector */ readonly temperature: number;
  /** [Pa] of the chamber */ readonly pressure: number;
}

/** The wall's points with what the film leaves of T_aw. @param wallTemperature for h_g [K] */
export function underFilm(
  points: readonly HotPoint[],
  { fluid, massFlow, temperature, pressure }: Film,
  wallTemperature: number,
): readonly HotPoint[] {
  const top = fluid.highestEnthalpy(pressure);
  const last = fluid.stateAt(pressure, top);
  let enthalpy = fluid.enthalpyAt(pressure, temperature);
  let film = temperature;
  return points.map((point, i) => {
    const before = points[i - 1];
    if (before !== undefined && film < point.recovery) {
      const area = ((before.girth + point.girth) / 2) * (point.path - before.path);
      const coefficient = gasCoefficient(point, wallTemperature);
      const capacity = enthalpy < top ? fluid.stateAt(pressure, enthalpy).heatCapacity : last.heatCapacity;
      // Exact for constant capacity, so that no step overshoots the gas.
      const nearing = 1 - Math.exp(-(coefficient * area) / (FILM_EFFICIENCY.value * massFlow * capacity));
      enthalpy += capacity * (point.recovery - film) * nearing;
      film =
        enthalpy < top
          ? fluid.stateAt(pressure, enthalpy).temperature
          : last.temperature + (enthalpy - top) / last.heatCapacity;
    }
    return { ...point, recovery: Math.min(film, point.recovery) };
  });
}
