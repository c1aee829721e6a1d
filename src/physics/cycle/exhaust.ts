/** What the gas behind an open cycle’s turbine still gives as thrust. */

import { expandPerfect } from '../gas/index.ts';
import type { OpenCycle } from './model.ts';

export interface Exhaust {
  /** Behind the turbine [K] */ readonly temperature: number;
  /** [Pa] */ readonly pressure: number;
  /** Force over mass flow in vacuum [m/s] */ readonly effectiveVelocity: number;
  /** Force over mass flow at an ambient pressure [Pa] → [m/s], 0 or more */
  at(ambientPressure: number): number;
}

/**
 * Expansion from behind the turbine through a small nozzle:
 *
 *   T₂ = T₁ − η_T Δh_ideal/c_p,   p₂ = p₁/π,   c = u_e + p_e/(ρ_e u_e) − p_a A_e/ṁ
 *
 * with the heat capacities of the turbine’s gas. In dense air the gas leaves the small nozzle at the latest at its throat: the
 * larger of the two thrusts is taken, and none below zero.
 */
export function exhaustOf({
  gas,
  efficiency,
  pressureRatio,
  exhaustAreaRatio,
  chamberPressure,
}: OpenCycle): Exhaust {
  const temperature = gas.temperature - (efficiency * gas.idealWork(pressureRatio)) / gas.heatCapacity;
  const pressure = chamberPressure / pressureRatio;
  const { gamma, molarMass } = gas;
  const flow = expandPerfect({ gamma, molarMass, temperature, pressure });
  const ends = [flow.throat, flow.atAreaRatio(exhaustAreaRatio, 'supersonic')];
  const at = (ambientPressure: number): number =>
    Math.max(
      0,
      ...ends.map((end) => end.velocity + (end.pressure - ambientPressure) / (end.density * end.velocity)),
    );
  return { temperature, pressure, effectiveVelocity: at(0), at };
}

/**
 * Specific impulse of chamber and dump together [s]
 *
 *   I = (ṁ_c I_c + ṁ_d I_d)/(ṁ_c + ṁ_d),   I_c − I = x (I_c − I_d),   x = ṁ_d/(ṁ_c + ṁ_d)
 *
 * Check: 2 % dumped at 150 s beside a chamber of 350 s cost 0.02 · 200 = 4 s.
 */
export function withDump(chamberImpulse: number, dumpImpulse: number, share: number): number {
  return chamberImpulse - share * (chamberImpulse - dumpImpulse);
}
