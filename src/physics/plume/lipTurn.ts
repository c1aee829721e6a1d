/**
 * How the boundary of the jet turns at the lip.
 *
 *   p_a < p_lip:   Δθ = ν(p_a) − ν(p_lip)                    a centred expansion (Prandtl–Meyer), exact in round flow too
 *   p_a > p_lip:   Δθ = −θ of the shock with p₂/p₁ = p_a/p_lip    (Rankine–Hugoniot, gasShock.ts)
 *
 * for the study's gas through its table. In vacuum, or below the lowest pressure that the gas data reach, the boundary is
 * turned to that pressure: a lower bound for the turn.
 * Source: L. Prandtl 1907, T. Meyer 1908; NACA Report 1135 (1953).
 * Check: γ = 1.4, M = 3, p_lip/p_a = 2 → 8.351°; γ = 1.2, M = 3, 5 → 21.543°.
 */

import { nuAtPressure, type SupersonicTable, tableStateAt } from '../flow/gasTable.ts';
import { type FlowAhead, type GasShock, gasShockOfRise } from '../flow/shocks/gasShock.ts';
import { quotientAt, type ShockGas } from '../flow/shocks/shockGas.ts';
import type { LipTurn } from './model.ts';

/** Pressures that differ by less than this share are the same. */
const SAME = 1e-3;

export interface LipState {
  /** [rad] */ readonly nu: number;
  /** [rad] */ readonly angle: number;
}

export interface LipWave {
  readonly turn: LipTurn;
  readonly shock: GasShock | null;
  /** The flow at the lip before it turns. */ readonly ahead: FlowAhead;
  /** ν on the boundary [rad] if its pressure is reached without loss */ readonly boundaryNu: number;
}

/** @throws ProblemError where no shock at the lip reaches the ambient pressure */
export function lipTurn(
  table: SupersonicTable,
  gas: ShockGas,
  lip: LipState,
  ambientPressure: number,
  lowestPressure: number,
): LipWave {
  const state = tableStateAt(table, lip.nu);
  // The density of the shock's own gas, so that no difference between two tables passes for a weak shock.
  const density = state.pressure / quotientAt(gas, state.speed ** 2, state.pressure);
  const ahead = { pressure: state.pressure, density, speed: state.speed };
  const same = { lipPressure: state.pressure, lipMach: state.mach, lipAngle: lip.angle };
  if (ambientPressure > state.pressure * (1 + SAME)) {
    const shock = gasShockOfRise(gas, ahead, ambientPressure);
    const turn: LipTurn = {
      ...same,
      regime: 'over-expanded',
      turn: -shock.turn,
      boundaryMach: shock.machBehind,
      shockAngle: shock.waveAngle,
      boundaryPressure: ambientPressure,
    };
    return { turn, shock, ahead, boundaryNu: nuAtPressure(table, ambientPressure) };
  }
  const boundaryPressure = Math.max(ambientPressure, lowestPressure);
  const nu = boundaryPressure === lowestPressure ? table.nuMax : nuAtPressure(table, boundaryPressure);
  const turn: LipTurn = {
    ...same,
    regime: ambientPressure < state.pressure * (1 - SAME) ? 'under-expanded' : 'matched',
    turn: nu - lip.nu,
    boundaryMach: tableStateAt(table, nu).mach,
    shockAngle: null,
    boundaryPressure,
  };
  return { turn, shock: null, ahead, boundaryNu: nu };
}

/**
 * Largest turn of a perfect gas of Mach number 1 into a vacuum, ν_max [rad]:  (π/2) [ √((γ+1)/(γ−1)) − 1 ].
 * Source: NACA Report 1135 (1953). Check: γ = 1.4 → 130.454°.
 */
export function greatestTurnIntoVacuumPerfect(gamma: number): number {
  return (Math.PI / 2) * (Math.sqrt((gamma + 1) / (gamma - 1)) - 1);
}
