import type { ModeChange } from '../model.ts';
import {
  KALT_BADAL,
  SCHILLING_CONTOURED,
  SEPARATION_PRESSURE_RATIO_SUMMERFIELD,
  separationPressureRatioPower,
  separationPressureRatioSchmucker,
  separationPressureRatioStark,
  separationPressureRatioZukoski,
} from '../separation/formulas.ts';

/** One criterion as it judges the extension: at which ambient pressure it lets the gas of a given wall pressure go. */
interface Criterion {
  readonly by: string;
  /** Mach numbers at which it counts [–]; null: all. */ readonly mach: readonly [number, number] | null;
  /** p_c/p_a at which it counts [–]; null: all. */ readonly pressureRatio: readonly [number, number] | null;
  /** p_sep/p_a [–] */ ratio(mach: number | null, pressureRatio: number): number | null;
}

const ofMach =
  (ratio: (mach: number) => number) =>
  (mach: number | null): number | null =>
    mach === null ? null : ratio(mach);

/** The first whose value exists decides; formulas of all but the first from memory as well. */
const CRITERIA: readonly Criterion[] = [
  {
    by: 'Schmucker 1973',
    mach: [1.5, 5.5],
    pressureRatio: null,
    ratio: ofMach(separationPressureRatioSchmucker),
  },
  {
    by: 'Summerfield 1954',
    mach: [2, 4],
    pressureRatio: null,
    ratio: () => SEPARATION_PRESSURE_RATIO_SUMMERFIELD,
  },
  { by: 'Stark 2013', mach: [2.5, 4.5], pressureRatio: null, ratio: ofMach(separationPressureRatioStark) },
  { by: 'Zukoski 1967', mach: [1.4, 6], pressureRatio: null, ratio: ofMach(separationPressureRatioZukoski) },
  {
    by: 'Kalt & Badal 1965',
    mach: null,
    pressureRatio: [10, 250],
    ratio: (_, pressureRatio) => separationPressureRatioPower(KALT_BADAL, pressureRatio),
  },
  {
    by: 'Schilling 1962',
    mach: null,
    pressureRatio: [10, 250],
    ratio: (_, pressureRatio) => separationPressureRatioPower(SCHILLING_CONTOURED, pressureRatio),
  },
];

/** The flow goes back at a pressure ratio lower by up to this share: P. Reijasse et al., Progress in Propulsion Physics 2, 2011. */
export const HYSTERESIS = 0.2;

/** What the extension's wall feels just behind the kink. */
export interface BehindKink {
  /** [Pa] */ readonly pressure: number;
  readonly mach: number | null;
  /** [Pa] of the chamber */ readonly chamberPressure: number;
}

/**
 * Ambient pressure at which the flow leaves the kink for the lip.
 *
 *   p_w = p_a · (p_sep/p_a)(M_w)
 *
 * p_w, M_w: wall of the extension just behind the kink, flowing full. In denser air the gas cannot follow the extension;
 * where the pressure along it is constant or rises, it lets go of all of it at once or of nothing.
 *
 *   back on the way down:  p_a,back = p_a … p_a/(1 − 0.2)
 *
 * Source: the standard relation (from memory); hysteresis of about 20 % of the pressure ratio in cold gas, P. Reijasse et
 * al., Progress in Propulsion Physics 2, 2011, 655–674 (abstract).
 */
export function transitionOf(
  behind: BehindKink,
): Pick<ModeChange, 'ambientPressure' | 'band' | 'back' | 'estimates'> {
  const estimates = CRITERIA.flatMap((criterion) => {
    const ambientPressure = limitAmbient(criterion, behind);
    return ambientPressure === null ? [] : [{ by: criterion.by, ambientPressure }];
  });
  const values = estimates.map((each) => each.ambientPressure);
  const ambientPressure = values[0] ?? behind.pressure / SEPARATION_PRESSURE_RATIO_SUMMERFIELD;
  return {
    ambientPressure,
    band: { low: Math.min(ambientPressure, ...values), high: Math.max(ambientPressure, ...values) },
    back: { low: ambientPressure, high: ambientPressure / (1 - HYSTERESIS) },
    estimates,
  };
}

/** [Pa] where p_w/p_a meets the criterion, null where it does not count there. */
function limitAmbient(criterion: Criterion, { pressure, mach, chamberPressure }: BehindKink): number | null {
  if (criterion.mach !== null) {
    if (mach === null || mach < criterion.mach[0] || mach > criterion.mach[1]) return null;
  }
  let ambient = pressure / SEPARATION_PRESSURE_RATIO_SUMMERFIELD;
  // A power law turns the next guess by a fifth of the last error: settled to the last digit in 30 steps.
  for (let i = 0; i < 30; i++) {
    const ratio = criterion.ratio(mach, chamberPressure / ambient);
    if (ratio === null) return null;
    ambient = pressure / ratio;
  }
  const range = criterion.pressureRatio;
  const pressureRatio = chamberPressure / ambient;
  return range !== null && (pressureRatio < range[0] || pressureRatio > range[1]) ? null : ambient;
}
