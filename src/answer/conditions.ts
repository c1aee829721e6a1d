/** One engine at one ambient pressure: rows of the answer, curves over altitude. Cheap enough to drag. */

import { airAtGeometricAltitude } from '../physics/air/index.ts';
import { STANDARD_GRAVITY } from '../physics/constants.ts';
import type { ThrustAt } from '../physics/nozzle/model.ts';
import type { ConditionRow, ThrustFigures } from './model.ts';
import { flightMachAt, plugAt } from './plugRow.ts';
import { rowSeparation } from './separation/rowSeparation.ts';
import type { EngineSolution } from './solution.ts';
import { partsAt } from './thrustParts.ts';

/** Geometric altitudes [m] of every answer, pad to the edge of space. */
export const STANDARD_ALTITUDES: readonly number[] = [
  0, 1, 2, 5, 10, 15, 20, 25, 30, 40, 50, 60, 80, 100,
].map((kilometres) => kilometres * 1000);

export interface Condition {
  readonly row: ConditionRow;
  /** Why thrust, thrust coefficient and specific impulse are null; null when they are not. */
  readonly absent: string | null;
}

/** Thrust figures at one ambient pressure, and the nozzle's own state there. */
export interface FiguresAt {
  readonly at: ThrustAt;
  readonly figures: ThrustFigures;
  /** Why thrust, thrust coefficient and specific impulse are null; null when they are not. */
  readonly absent: string | null;
}

/** The figures of {@link conditionAt} alone: no parts of the thrust, no base, no spans, no second mode. */
export function figuresAt(
  solution: EngineSolution,
  ambientPressure: number,
  altitude: number | null,
): FiguresAt {
  const at = solution.nozzle.at(ambientPressure, flightMachAt(solution, altitude));
  return {
    at,
    figures: figuresOf(solution, at),
    absent: at.thrustCoefficient === null ? (at.absent ?? 'The model has no value here.') : null,
  };
}

/**
 * Thrust, thrust coefficient and specific impulse at an ambient pressure.
 *
 *   F = C_F · p₀ · A_t        I_sp = F / (ṁ s g₀)        C_F = C_F,flow − s ΔC_F
 *
 * ΔC_F is what friction, slow chemistry and lagging drops take in full flow; it does not hang on the ambient pressure.
 *
 * @param ambientPressure p_a [Pa] ≥ 0
 * @param altitude geometric altitude of that pressure [m], null for a pressure without one
 * Source: G. P. Sutton, O. Biblarz, Rocket Propulsion Elements, 7th ed., 2001, ch. 3.
 */
export function conditionAt(
  solution: EngineSolution,
  ambientPressure: number,
  altitude: number | null,
): Condition {
  const { at, figures, absent } = figuresAt(solution, ambientPressure, altitude);
  return {
    row: {
      altitude,
      ambientPressure,
      ...figures,
      thrustParts: partsAt(solution, at),
      flow: at.flow,
      exitPressure: at.exit.pressure,
      ...plugAt(solution, ambientPressure, altitude),
      ...(at.separation && { separation: rowSeparation(solution, at.separation) }),
      ...modesOf(solution, at),
    },
    absent,
  };
}

/** Which mode is in use, and what either would give. */
function modesOf(solution: EngineSolution, at: ThrustAt): Pick<ConditionRow, 'mode' | 'modes'> {
  const { change } = solution.nozzle;
  if (change === undefined || at.mode === undefined) return {};
  const modes = [change.thick, change.thin].map((mode) => {
    const there = mode.at(at.ambientPressure);
    return { mode: mode.name, ...figuresOf(solution, there), flow: there.flow };
  });
  return { mode: at.mode, modes };
}

/** Thrust figures of a nozzle's state at one ambient pressure. */
export function figuresOf(solution: EngineSolution, at: ThrustAt): ThrustFigures {
  const pressureTimesArea = solution.expansion.chamber.pressure * solution.throatArea;
  // s: mass flow over that of the choked throat, below 1 where the surroundings hold it back.
  const share = at.separation?.massFlowShare ?? 1;
  const lost = share * solution.losses.coefficientLost;
  const coefficient = at.thrustCoefficient === null ? null : at.thrustCoefficient - lost;
  const thrust = coefficient === null ? null : coefficient * pressureTimesArea;
  return {
    thrustCoefficient: coefficient,
    specificImpulse: thrust === null ? null : thrust / (solution.massFlow * share * STANDARD_GRAVITY),
    thrust,
    thrustIfFull: (at.thrustCoefficientIfFull - lost) * pressureTimesArea,
  };
}

export function conditionAtAltitude(solution: EngineSolution, altitude: number): Condition {
  return conditionAt(solution, airAtGeometricAltitude(altitude).pressure, altitude);
}

/** {@link figuresAt} at a geometric altitude [m]. */
export function figuresAtAltitude(solution: EngineSolution, altitude: number): FiguresAt {
  return figuresAt(solution, airAtGeometricAltitude(altitude).pressure, altitude);
}

export function conditionInVacuum(solution: EngineSolution): Condition {
  return conditionAt(solution, 0, null);
}

/** The row of an answer at an ambient pressure; for moving an altitude handle. */
export function rowAt(
  solution: EngineSolution,
  ambientPressure: number,
  altitude: number | null,
): ConditionRow {
  return conditionAt(solution, ambientPressure, altitude).row;
}

/** Top of a curve over altitude [m]: above it, the air left changes no thrust that can be seen. */
export const CURVE_TOP = 40_000;

/** `count` rows evenly from the pad to {@link CURVE_TOP}, then one in vacuum (altitude null). */
export function altitudeCurve(solution: EngineSolution, count = 81): readonly ConditionRow[] {
  const step = CURVE_TOP / (count - 1);
  const rows = Array.from({ length: count }, (_, i) => conditionAtAltitude(solution, i * step).row);
  return [...rows, conditionInVacuum(solution).row];
}
