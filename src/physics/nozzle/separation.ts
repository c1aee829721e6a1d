import type { Expansion, FlowState } from '../gas/flow.ts';
import type { FlowVerdict } from './model.ts';

/** How far published separation criteria differ from each other [–]; "near the limit" is this far above it. */
export const CRITERIA_SPREAD = 0.2;

/** Mach numbers to which the criterion below was fitted (from memory, rounded). */
const FITTED_MACH = { low: 1.5, high: 5.5 };

/**
 * Ratio of the wall pressure at which turbulent flow leaves the wall to ambient pressure, p_sep/p_a [–].
 *
 *   p_sep/p_a = (1.88 M − 1)^−0.64
 *
 * Below M = 1.064 the fit would exceed 1; there it is 1, since no flow leaves a wall whose pressure is ambient or more.
 *
 * @param mach M, Mach number at the wall just upstream [–], ≥ 1
 * Source: R. Schmucker, TU Munich TB-7, -10, -14, 1973 (translation NASA TM-77396, 1984); formula from memory.
 * Limits: free separation, turbulent boundary layer; other published criteria differ by 15–20 %.
 * Check: M = 3 → 0.3745.
 */
export function separationPressureRatioSchmucker(mach: number): number {
  return mach <= UNITY_MACH ? 1 : (1.88 * mach - 1) ** -0.64;
}
/** Where the fit gives exactly 1: 1.88 M − 1 = 1. */
const UNITY_MACH = 2 / 1.88;

/**
 * p_sep/p_a = 0.4 [–], whatever the Mach number: used where the gas has no sound speed.
 * Source: M. Summerfield, C. Foster, W. Swan, Jet Propulsion 24(9), 1954, 319–321.
 */
export const SEPARATION_PRESSURE_RATIO_SUMMERFIELD = 0.4;

/**
 * Whether the flow fills a nozzle of fixed shape, by the mean exit state.
 *
 *   unchoked        p_a > p_t: ambient above the throat pressure of choked flow
 *   full            p_e ≥ 1.2 p_sep, or p_e ≥ p_a
 *   near the limit  p_sep ≤ p_e < 1.2 p_sep
 *   separated       p_e < p_sep
 *
 * The mean exit pressure stands for the wall pressure at the lip. In a bell the wall pressure is higher than
 * the mean, so a bell can still flow full where this says separated.
 */
export function judgeFlow(expansion: Expansion, exit: FlowState, ambientPressure: number): FlowVerdict {
  const { ratio, criterion } = separationRatio(exit.mach);
  const separationPressure = ratio * ambientPressure;
  const verdict = { criterion, lipPressure: exit.pressure, separationPressure };
  if (ambientPressure > expansion.throat.pressure) return { state: 'unchoked', ...verdict };
  if (exit.pressure >= Math.min(ambientPressure, (1 + CRITERIA_SPREAD) * separationPressure)) {
    return { state: 'full', ...verdict };
  }
  return { state: exit.pressure >= separationPressure ? 'near the limit' : 'separated', ...verdict };
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
