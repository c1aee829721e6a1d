/** The error of what presses on the wall where the gas has left it. */

import type { ThrustAt } from '../../physics/nozzle/model.ts';
import { wallInUse } from '../separation/wallInUse.ts';
import type { EngineSolution } from '../solution.ts';
import { ERROR_NAMES, type ModelError } from './model.ts';

const SOURCE = 'pressure there over ambient 0.95 to 1 in free separation (from memory)';

/** Whether the thrust follows where the gas leaves the wall: not for a nozzle that by definition holds it. */
export function thrustFollowsSeparation({ separation }: ThrustAt): boolean {
  const span = separation?.thrustCoefficient ?? null;
  return span !== null && span.low < span.high;
}

/** Nothing where the deciding criterion holds the gas on to the lip, or nothing is choked. */
export function separationErrors({ nozzle }: EngineSolution, at: ThrustAt): readonly ModelError[] {
  if (!thrustFollowsSeparation(at) || at.ambientPressure > nozzle.expansion.throat.pressure) return [];
  const deciding = wallInUse(nozzle, at.ambientPressure)
    ?.byCriterion(at.ambientPressure)
    .find(({ isDeciding }) => isDeciding);
  if (deciding === undefined || deciding.gain.low === deciding.gain.high) return [];
  const { low, best, high } = deciding.gain;
  return [
    {
      name: ERROR_NAMES.deadAir,
      source: SOURCE,
      low: { coefficient: low - best, efficiency: 1 },
      high: { coefficient: high - best, efficiency: 1 },
    },
  ];
}
