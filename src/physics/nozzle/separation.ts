import type { Expansion } from '../gas/flow.ts';
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

/** The state that the wall feels at the lip. */
export interface WallAtLip {
  /** [Pa] */ readonly pressure: number;
  readonly mach: number | null;
  /** `mean`: no flow field could be had, the mean over the exit stands in. */ readonly from:
    | 'field'
    | 'mean';
}

/**
 * Whether the flow fills a nozzle of fixed shape, by the state at its lip.
 *
 *   unchoked        p_a > p_t: ambient above the throat pressure of choked flow
 *   full            p_lip ≥ 1.2 p_sep, or p_lip ≥ p_a
 *   near the limit  p_sep ≤ p_lip < 1.2 p_sep
 *   separated       p_lip < p_sep
 *
 * The lip state is the wall's own from the flow field for cone and bell, the mean of one-dimensional flow for the ideal
 * nozzle. Where a field cannot be had the mean stands in and the criterion says so; in a bell the mean is lower than the
 * wall's, so that it may then still flow full where this says separated.
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
