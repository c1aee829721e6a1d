import { ProblemError } from '../../numerics/problem.ts';
import { airAtGeometricAltitude } from './air.ts';

/** What surrounds a nozzle: a pressure, and the altitude it belongs to, if any. */
export interface AmbientCondition {
  /** [Pa] absolute */ readonly pressure: number;
  /** [m] in the standard air; null for a pressure without an altitude */ readonly altitudeGeometric:
    | number
    | null;
}

/** The standard air at a geometric altitude [m], −5 000 … 1 000 000. */
export function ambientAtGeometricAltitude(altitudeGeometric: number): AmbientCondition {
  return { pressure: airAtGeometricAltitude(altitudeGeometric).pressure, altitudeGeometric };
}

/**
 * A still surrounding of a fixed pressure: a test stand, a pool, another planet, vacuum (0 Pa).
 *
 * @param pressure [Pa] absolute, ≥ 0 and finite
 * @throws ProblemError `ambient-pressure-invalid`
 */
export function stillAmbient(pressure: number): AmbientCondition {
  requireAmbientPressure(pressure);
  return { pressure, altitudeGeometric: null };
}

/**
 * Refuse an ambient pressure [Pa] that is negative, infinite or not a number.
 *
 * @throws ProblemError `ambient-pressure-invalid`
 */
export function requireAmbientPressure(pressure: number): void {
  if (pressure >= 0 && Number.isFinite(pressure)) return;
  throw new ProblemError({
    code: 'ambient-pressure-invalid',
    what: `The ambient pressure ${pressure} Pa is not a pressure.`,
    mend: 'Give an absolute pressure of 0 Pa (vacuum) or more.',
    facts: { pressure },
  });
}
