/** Pumps driven by motors from a battery. */

import type { Balance, ElectricCycle } from './model.ts';
import { pumpWork } from './openCycle.ts';

/** All propellant burns in the chamber; the battery pays: P = Σ ṁ Δp/(η_p ρ). */
export function balanceElectric(cycle: ElectricCycle): Balance {
  const pumps = pumpWork(cycle);
  return {
    pumpPower: cycle.flow.oxidiser * pumps.oxidiser + cycle.flow.fuel * pumps.fuel,
    oxidiserPressure: pumps.oxidiserPressure,
    fuelPressure: pumps.fuelPressure,
    turbineFlow: 0,
    pressureRatio: null,
    work: null,
    dumped: { oxidiser: 0, fuel: 0 },
  };
}

export interface Battery {
  /** [J/kg] */ readonly specificEnergy: number;
  /** [W/kg] */ readonly specificPower: number;
  /** Share of the stored energy that is drawn [–] */ readonly used: number;
}

/**
 * Mass of the battery [kg]: the larger of what holds the energy and what gives the power,
 *
 *   m = max( P t / (η used e),  P / (η p) )
 *
 * Check: 100 kW at η = 0.8 for 150 s, 0.6 MJ/kg, 90 % used → 18.75 MJ / 0.54 MJ/kg = 34.7 kg; 2 kW/kg → 62.5 kg: the power decides.
 */
export function batteryMass(
  pumpPower: number,
  motorEfficiency: number,
  time: number,
  battery: Battery,
): number {
  const power = pumpPower / motorEfficiency;
  return Math.max((power * time) / (battery.used * battery.specificEnergy), power / battery.specificPower);
}
