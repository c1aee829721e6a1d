/** All models' errors that move a thrust coefficient at one place. */

import type { ThrustAt } from '../../physics/nozzle/model.ts';
import type { EngineSolution } from '../solution.ts';
import { lossErrors } from './lossErrors.ts';
import type { ModelError } from './model.ts';
import { type CoefficientKey, plugErrors } from './plugErrors.ts';
import { separationErrors } from './separationErrors.ts';

export interface ErrorsAt {
  /** Delivered, losses taken off [–]. */ readonly coefficient: number;
  readonly errors: readonly ModelError[];
}

/** Null where there is no thrust coefficient. */
export function errorsAt(
  solution: EngineSolution,
  at: ThrustAt,
  altitude: number | null,
  key: CoefficientKey,
): ErrorsAt | null {
  const flow = at[key];
  if (flow === null) return null;
  const share = at.separation?.massFlowShare ?? 1;
  return {
    coefficient: flow - share * solution.losses.coefficientLost,
    errors: [
      ...lossErrors(solution, share),
      ...plugErrors(solution, at, altitude, key),
      ...(key === 'thrustCoefficient' ? separationErrors(solution, at) : []),
    ],
  };
}
