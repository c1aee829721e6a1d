/** Cycles that dump the turbine’s gas: gas generator, tap-off, bleed expander. */

import { ProblemError } from '../../numerics/problem.ts';
import { pressureBehindPump } from './feed.ts';
import type { Balance, OpenCycle } from './model.ts';

/** Pressures behind the pumps [Pa] and the power each kilogram needs [J/kg]. */
export interface PumpWork {
  readonly oxidiserPressure: number;
  readonly fuelPressure: number;
  readonly oxidiser: number;
  readonly fuel: number;
}

/** Both propellants raised to what injector, lines and, for the fuel, the jacket need. */
export function pumpWork(
  cycle: Omit<OpenCycle, 'kind' | 'gas' | 'pressureRatio' | 'exhaustAreaRatio' | 'efficiency'>,
): PumpWork {
  const { fed, drops, chamberPressure, tankPressure, pumpEfficiency } = cycle;
  const oxidiserPressure = pressureBehindPump(chamberPressure, drops.injector, drops.lines);
  const fuelPressure = pressureBehindPump(chamberPressure, drops.injector, drops.lines, drops.jacket);
  const work = (to: number, efficiency: number, density: number | null): number =>
    Math.max(to - tankPressure, 0) / (efficiency * density!);
  return {
    oxidiserPressure,
    fuelPressure,
    oxidiser: work(oxidiserPressure, pumpEfficiency.oxidiser, fed.oxidiser.density),
    fuel: work(fuelPressure, pumpEfficiency.fuel, fed.fuel.density),
  };
}

/**
 * Power balance with a turbine that is fed beside the chamber:
 *
 *   ṁ_g w = ṁ_o e_o + ṁ_f e_f + ṁ_g e_g,   w = η_T Δh_ideal(π),   e = Δp/(η_p ρ),   e_g = (r e_o + e_f)/(1 + r)
 *   ṁ_g = (ṁ_o e_o + ṁ_f e_f)/(w − e_g)
 *
 * The gas reaches the turbine at the chamber’s pressure. r: mixture ratio of the gas, 0 where it is fuel alone.
 *
 * @throws ProblemError `cycle-cannot-close` where the gas cannot even pump itself
 * Source: M. Martinez-Sanchez, MIT 16.512 Rocket Propulsion, lecture 25.
 */
export function balanceOpen(cycle: OpenCycle): Balance {
  const { flow, gas } = cycle;
  const pumps = pumpWork(cycle);
  const { work, own } = workLeft(cycle);
  if (work <= own) throw cannotClose(cycle, work, own);
  const turbineFlow = (flow.oxidiser * pumps.oxidiser + flow.fuel * pumps.fuel) / (work - own);
  const ratio = gas.mixtureRatio ?? 0;
  return {
    pumpPower: turbineFlow * work,
    oxidiserPressure: pumps.oxidiserPressure,
    fuelPressure: pumps.fuelPressure,
    turbineFlow,
    pressureRatio: cycle.pressureRatio,
    work,
    dumped: { oxidiser: (turbineFlow * ratio) / (1 + ratio), fuel: turbineFlow / (1 + ratio) },
  };
}

/** What a kilogram of the turbine’s gas gives, and what it takes to pump it [J/kg]. */
export function workLeft(cycle: OpenCycle): { readonly work: number; readonly own: number } {
  const pumps = pumpWork(cycle);
  const ratio = cycle.gas.mixtureRatio ?? 0;
  return {
    work: cycle.efficiency * cycle.gas.idealWork(cycle.pressureRatio),
    own: (ratio * pumps.oxidiser + pumps.fuel) / (1 + ratio),
  };
}

function cannotClose({ chamberPressure }: OpenCycle, work: number, own: number): ProblemError {
  return new ProblemError({
    code: 'cycle-cannot-close',
    what: `At ${(chamberPressure / 1e5).toPrecision(3)} bar the turbine’s gas gives ${(work / 1e3).toPrecision(3)} kJ a kilogram and needs ${(own / 1e3).toPrecision(3)} kJ to be pumped itself.`,
    why: 'Nothing is left for the propellants of the chamber.',
    mend: 'Lower the chamber pressure, or raise turbine pressure ratio, inlet temperature or efficiencies.',
    where: 'cycle',
    facts: { work, own, chamberPressure },
  });
}
