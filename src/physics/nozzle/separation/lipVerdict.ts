import type { Expansion } from '../../gas/flow.ts';
import type { FlowVerdict } from '../model.ts';
import type { WallAtLip } from '../wallFlow.ts';
import { SEPARATION_PRESSURE_RATIO_SUMMERFIELD, separationPressureRatioSchmucker } from './formulas.ts';

/** How far published criteria differ from each other [–]; "near the limit" is this far above the one used here. */
export const CRITERIA_SPREAD = 0.2;

/** Mach numbers to which the criterion below was fitted (from memory, rounded). */
const FITTED_MACH = { low: 1.5, high: 5.5 };

/**
 * Whether the flow fills a channel whose wall is known at its lip only, by one criterion.
 *
 *   unchoked        p_a > p_t: ambient above the throat pressure of choked flow
 *   full            p_lip ≥ 1.2 p_sep, or p_lip ≥ p_a
 *   near the limit  p_sep ≤ p_lip < 1.2 p_sep
 *   separated       p_lip < p_sep
 *
 * R. Schmucker 1973; without a Mach number M. Summerfield, C. Foster, W. Swan 1954. Walls known along their length are
 * judged by `wallSeparation`.
 */
export function judgeFlow(expansion: Expansion, lip: WallAtLip, ambientPressure: number): FlowVerdict {
  const { ratio, criterion } = separationRatio(lip.mach);
  const separationPressure = ratio * ambientPressure;
  const verdict = {
    criterion: lip.from === 'mean' ? `${criterion}, by the mean exit pressure` : criterion,
    lipPressure: lip.pressure,
    separationPressure,
  };
  if (ambientPressure > expansion.throat.pressure) return { state: 'unchoked', ...verdict };
  if (lip.pressure >= Math.min(ambientPressure, (1 + CRITERIA_SPREAD) * separationPressure)) {
    return { state: 'full', ...verdict };
  }
  return { state: lip.pressure >= separationPressure ? 'near the limit' : 'separated', ...verdict };
}

function separationRatio(mach: number | null): { ratio: number; criterion: string } {
  if (mach === null) {
    return {
      ratio: SEPARATION_PRESSURE_RATIO_SUMMERFIELD,
      criterion: 'Summerfield 1954 (the gas has no Mach number at the lip)',
    };
  }
  const fitted = mach >= FITTED_MACH.low && mach <= FITTED_MACH.high;
  return {
    ratio: separationPressureRatioSchmucker(mach),
    criterion: fitted ? 'Schmucker 1973' : 'Schmucker 1973, outside the Mach numbers it was fitted to',
  };
}
