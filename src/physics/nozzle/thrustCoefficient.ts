import type { Expansion, FlowState } from '../gas/flow.ts';

/**
 * Thrust coefficient C_F = F/(p0 A_t) [–] of a nozzle that flows full.
 *
 *   C_F = [ λ (ρu)_t u_e + (p_e − p_a) ε ] / p0,   ε = A_e/A_t
 *
 * Momentum and pressure at the exit plane; mass flow from the throat. Holds for any gas, reacting or not.
 *
 * @param expansion gas from its chamber; p0 [Pa] is the chamber's stagnation pressure, (ρu)_t [kg/(m² s)] the throat's
 * @param exit mean exit state: u_e [m/s], p_e [Pa]
 * @param areaRatio ε of that exit state [–]
 * @param divergenceFactor λ on the momentum term [–]
 * @param ambientPressure p_a [Pa]
 * Source: G. P. Sutton, O. Biblarz, Rocket Propulsion Elements, 7th ed., 2001, ch. 2–3 (thrust equation).
 * Check: γ = 1.2, ε = 10, vacuum → 1.7423.
 */
export function thrustCoefficientOf(
  expansion: Expansion,
  exit: FlowState,
  areaRatio: number,
  divergenceFactor: number,
  ambientPressure: number,
): number {
  const momentum = divergenceFactor * expansion.throat.massFlux * exit.velocity;
  const pressure = (exit.pressure - ambientPressure) * areaRatio;
  return (momentum + pressure) / expansion.chamber.pressure;
}
