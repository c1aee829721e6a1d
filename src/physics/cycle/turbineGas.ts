/** The gas that drives a turbine: what a kilogram of it can give, and what it gives as thrust when it is dumped. */

import { ProblemError } from '../../numerics/problem.ts';
import { type Expansion, expandPerfect, type PerfectGas } from '../gas/index.ts';

export interface TurbineGas {
  /** Before the turbine [K] */ readonly temperature: number;
  /** [kg/mol] */ readonly molarMass: number;
  /** [J/(kg K)], composition held */ readonly heatCapacity: number;
  /** cp/cv at held composition [–] */ readonly gamma: number;
  /** Oxidiser over fuel by mass [–]; null where it is one propellant alone. */
  readonly mixtureRatio: number | null;
  /** Inlet over outlet, where its data end [–] */ readonly mostRatio: number;
  /** Work without any loss from the inlet down to the outlet [J/kg]; `pressureRatio` = inlet over outlet ≥ 1. */
  idealWork(pressureRatio: number): number;
}

/** From one expansion of the gas at held composition: no chemistry is left at these temperatures. */
export function turbineGasOf(expansion: Expansion, mixtureRatio: number | null): TurbineGas {
  const { chamber, lowestPressure } = expansion;
  const mostRatio = chamber.pressure / lowestPressure;
  return {
    temperature: chamber.temperature,
    molarMass: chamber.molarMass,
    heatCapacity: chamber.cpFrozen,
    gamma: chamber.gammaFrozen,
    mixtureRatio,
    mostRatio,
    idealWork(pressureRatio) {
      if (pressureRatio <= 1) return 0;
      if (pressureRatio > mostRatio) throw ratioTooLarge(pressureRatio, mostRatio);
      return (
        chamber.enthalpy -
        expansion.atPressure(Math.max(chamber.pressure / pressureRatio, lowestPressure)).enthalpy
      );
    },
  };
}

/** A gas of constant heat capacity, for closed forms: w = c_p T [1 − π^(−(γ−1)/γ)]. */
export function perfectTurbineGas(gas: PerfectGas, mixtureRatio: number | null = null): TurbineGas {
  return turbineGasOf(expandPerfect(gas), mixtureRatio);
}

/** @param most at which the data of the gas end [–] */
export function ratioTooLarge(pressureRatio: number, most: number): ProblemError {
  return new ProblemError({
    code: 'turbine-ratio-too-large',
    what: `The turbine gas would have to expand by ${pressureRatio.toPrecision(3)} to one, and turns colder than its data reach.`,
    mend: `Take a turbine pressure ratio below ${most.toPrecision(2)}, or a hotter gas.`,
    facts: { pressureRatio, most },
  });
}
