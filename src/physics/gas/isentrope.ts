/** A rule for the state of a gas along one isentrope, and how much enthalpy a flow along it has given to its speed. */

import type { ChemistryKind, GasState } from './flow.ts';

/** A rule for the state along one isentrope. Throws ProblemError outside its range. */
export interface Isentrope {
  readonly chemistry: ChemistryKind;
  /** State at rest. */ readonly chamber: GasState;
  at(pressure: number): GasState;
  /** Which phases stand in a state and whether its composition follows: equal words mean that no edge lies between. */
  kindOf(state: GasState): string;
  /** Lowest pressure that the rule reaches [Pa]. */
  lowestPressure(): number;
}

/** Below this share of pressure drop the enthalpy difference loses digits and is integrated instead. */
const SMALL_DROP = 0.002;

/**
 * h0 − h [J/kg]. For a small drop from rest it is ∫ dp/ρ by the corrected trapezium with d(1/ρ)/dp = −1/(ρ γ p):
 *
 *   ∫ v dp = Δ/2 (v + v0) + Δ²/12 (v' − v0'),     error ~ (Δ/p)⁵/720
 */
export function enthalpyDrop(chamber: GasState, state: GasState): number {
  const drop = chamber.pressure - state.pressure;
  const gamma = state.isentropicExponent;
  const gamma0 = chamber.isentropicExponent;
  if (!(drop < SMALL_DROP * chamber.pressure) || gamma === null || gamma0 === null) {
    return Math.max(chamber.enthalpy - state.enthalpy, 0);
  }
  const v = 1 / state.density;
  const v0 = 1 / chamber.density;
  const slopes = v0 / (gamma0 * chamber.pressure) - v / (gamma * state.pressure);
  return Math.max((drop / 2) * (v + v0) + ((drop * drop) / 12) * slopes, 0);
}
