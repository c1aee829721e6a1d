/** Errors of a plug's models at one place: pressure on its base, loss between modules, slipstream. */

import { feltAmbient, plugOf } from '../../physics/nozzle/index.ts';
import type { ThrustAt } from '../../physics/nozzle/model.ts';
import { flightMachAt } from '../plugRow.ts';
import type { EngineSolution } from '../solution.ts';
import { ERROR_NAMES, type ErrorEffect, type ModelError } from './model.ts';

/** Which of the two thrust coefficients of a place is meant. */
export type CoefficientKey = 'thrustCoefficient' | 'thrustCoefficientIfFull';

export const BASE_SOURCE =
  'three published models of the base pressure, and an open wake of 90 % to 100 % of ambient';
export const SLIPSTREAM_SOURCE =
  'from a body without a jet to air at rest; E. L. Fleeman, Tactical Missile Design, AIAA, 2001 (from memory)';

/** Nothing where the engine has no plug. */
export function plugErrors(
  solution: EngineSolution,
  at: ThrustAt,
  altitude: number | null,
  key: CoefficientKey,
): readonly ModelError[] {
  const plug = plugOf(solution.nozzle);
  if (plug === null || at[key] === null) return [];
  const flightMach = flightMachAt(solution, altitude);
  const felt = feltAmbient(at.ambientPressure, flightMach);
  const p0 = plug.expansion.chamber.pressure;
  const errors: ModelError[] = [];
  const base = plug.base(felt.pressure);
  if (base !== null) {
    const end = (pressure: number) => moved(((pressure - base.pressure) * plug.baseArea) / p0);
    errors.push({
      name: ERROR_NAMES.basePressure,
      source: BASE_SOURCE,
      low: end(base.low),
      high: end(base.high),
    });
  }
  const { modules } = plug;
  if (modules !== null && solution.input.losses !== 'none') {
    // Modules cost a share of the vacuum thrust of a slot all round, at every altitude.
    const slot = plug.at(0).thrustCoefficientIfFull / (1 - modules.value);
    const end = (loss: number) => moved(-slot * (loss - modules.value));
    errors.push({
      name: `${ERROR_NAMES.modules}, ${plug.spec.modules?.shape ?? 'round'}`,
      source: modules.from,
      low: end(modules.low),
      high: end(modules.high),
    });
  }
  if (flightMach > 0) {
    const best = at[key];
    // Gas and base feel `pressure`, the rest of the vehicle the air: see plugThrust.
    const end = (pressure: number) => {
      const there = plug.at(pressure)[key];
      const rest = ((at.ambientPressure - pressure) * plug.spec.areaRatio) / p0;
      return moved(there === null ? 0 : there - rest - best);
    };
    errors.push({
      name: ERROR_NAMES.slipstream,
      source: SLIPSTREAM_SOURCE,
      low: end(felt.low),
      high: end(felt.high),
    });
  }
  return errors;
}

function moved(coefficient: number): ErrorEffect {
  return { coefficient, efficiency: 1 };
}
