/**
 * How the lip shock of an over-expanded jet meets the axis: by reflection from it, or with a Mach disk.
 *
 *   detachment     behind the lip shock no attached shock turns the flow back by θ:    θ > θ_max(M₂)
 *   von Neumann    the two shocks of a regular reflection would raise the pressure less than one normal shock: p₃ < p_n
 *
 * Above detachment a regular reflection is impossible, below von Neumann's a Mach disk; between them both are possible and
 * which one stands hangs on the history. In that band the disk is told, as steady jets choose it (A. Hadjadj, A. N.
 * Kudryavtsev, M. S. Ivanov, AIAA J. 42(3), 2004, 570; from memory).
 * Source: J. von Neumann, Oblique Reflection of Shocks, 1943; G. Ben-Dor, Shock Wave Reflection Phenomena, 1991 (from memory).
 * Limits: plane flow with the strength that the shock has at the lip. In a round jet it grows towards the axis, where a
 * disk, if only a small one, closes it always; so `regular reflection` reads: the disk is too small to matter.
 */

import { type FlowAhead, type GasShock, gasShockOfTurn, normalGasShock } from '../flow/shocks/gasShock.ts';
import type { ShockGas } from '../flow/shocks/shockGas.ts';
import type { ShockMeeting } from './model.ts';

export interface MeetingVerdict {
  readonly meeting: ShockMeeting;
  /** By which condition. */ readonly by: 'detachment' | 'von Neumann' | 'neither';
}

/** @param lipShock the shock from the lip into the flow `ahead` */
export function shockMeeting(gas: ShockGas, ahead: FlowAhead, lipShock: GasShock): MeetingVerdict {
  if (lipShock.machBehind <= 1) return { meeting: 'Mach disk', by: 'detachment' };
  const reflected = gasShockOfTurn(gas, lipShock.behind, lipShock.turn);
  if (reflected === null) return { meeting: 'Mach disk', by: 'detachment' };
  if (reflected.behind.pressure < normalGasShock(gas, ahead).behind.pressure) {
    return { meeting: 'regular reflection', by: 'neither' };
  }
  return { meeting: 'Mach disk', by: 'von Neumann' };
}
