/** The temperature of a cell: exhaust, air, or both in one cell at one temperature. */

import type { ExhaustGas } from './expansionGas.ts';

/** [K] @param share of the mass that is exhaust @param density [kg/m³] @param pressure [Pa] */
export type Thermometer = (share: number, density: number, pressure: number) => number;

/** R of air [J/(kg K)]: 8.31432/0.0289644, U.S. Standard Atmosphere 1976. */
const AIR = 287.053;
/** Rounds until the constant of the exhaust, which follows from its own θ, stands; it hardly changes. */
const ROUNDS = 3;

/**
 * Gases that share a cell in parts too small to see have one temperature and one pressure:
 *
 *   θ = p/ρ = T (Y R₁ + (1 − Y) R₂),   R₁ the exhaust’s at p and θ₁ = R₁ T
 *
 * Assumes: both are ideal gases.
 */
export function thermometer(exhaust: ExhaustGas): Thermometer {
  return (share, density, pressure) => {
    const theta = pressure / density;
    if (share <= 0) return theta / AIR;
    let own = theta;
    let temperature = 0;
    for (let round = 0; round < ROUNDS; round++) {
      const constant = exhaust.gasConstantAt(pressure, own);
      temperature = theta / (share * constant + (1 - share) * AIR);
      own = constant * temperature;
    }
    return temperature;
  };
}
