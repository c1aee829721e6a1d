import type { ModeChange } from '../model.ts';
import {
  CRITERIA,
  type Criterion,
  DECIDING,
  DECIDING_WITHOUT_MACH,
  type JudgedWall,
} from '../separation/criteria.ts';

/** The flow goes back at a pressure ratio lower by up to this share: P. Reijasse et al., Progress in Propulsion Physics 2, 2011. */
export const HYSTERESIS = 0.2;

/** What the extension's wall feels just behind the inflection. */
export interface BehindInflection {
  /** [Pa] */ readonly pressure: number;
  readonly mach: number | null;
  /** [rad] of the wall against the axis */ readonly angle: number;
  /** [Pa] of the chamber */ readonly chamberPressure: number;
  /** γ for a shock at the wall [–] */ readonly gamma: number;
}

/**
 * Ambient pressure at which the flow leaves the inflection for the lip.
 *
 *   p_w = p_a · (p_sep/p_a)(M_w)
 *
 * p_w, M_w: wall of the extension just behind the inflection, flowing full. In denser air the gas cannot follow the
 * extension; where the pressure along it is constant or rises, it lets go of all of it at once or of nothing. By every
 * criterion that counts there; the deciding one gives the value.
 *
 *   back on the way down:  p_a,back = p_a … p_a/(1 − 0.2)
 *
 * Source: the standard relation (from memory); hysteresis of about 20 % of the pressure ratio in cold gas, P. Reijasse et
 * al., Progress in Propulsion Physics 2, 2011, 655–674 (abstract).
 */
export function transitionOf(
  behind: BehindInflection,
): Pick<ModeChange, 'ambientPressure' | 'band' | 'back' | 'estimates'> {
  const { pressure, mach, chamberPressure, gamma } = behind;
  const judged: JudgedWall = { chamberPressure, gamma, form: 'contoured' };
  const decidingId = mach === null ? DECIDING_WITHOUT_MACH : DECIDING;
  const limitOf = (criterion: Criterion): number | null => criterion.limitAmbient(pressure, mach, judged);
  const deciding = CRITERIA.find(({ id }) => id === decidingId)!;
  const ambientPressure = limitOf(deciding)!;
  const estimates = [deciding, ...CRITERIA.filter((criterion) => criterion !== deciding)].flatMap(
    (criterion) => {
      const limit = limitOf(criterion);
      if (limit === null || (criterion !== deciding && !countsAt(criterion, behind, limit))) return [];
      return [{ by: criterion.name, ambientPressure: limit }];
    },
  );
  const values = estimates.map((each) => each.ambientPressure);
  return {
    ambientPressure,
    band: { low: Math.min(...values), high: Math.max(...values) },
    back: { low: ambientPressure, high: ambientPressure / (1 - HYSTERESIS) },
    estimates,
  };
}

/** Whether a criterion was made for such a Mach number, pressure ratio and wall. */
function countsAt(criterion: Criterion, behind: BehindInflection, ambient: number): boolean {
  const { mach, pressureRatio, wallAngle } = criterion;
  const within = (span: { readonly low: number; readonly high: number } | null, value: number | null) =>
    span === null || (value !== null && value >= span.low && value <= span.high);
  return (
    within(mach, behind.mach) &&
    within(pressureRatio, behind.chamberPressure / ambient) &&
    (wallAngle === null || behind.angle >= wallAngle)
  );
}
