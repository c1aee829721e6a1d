/** Dry mass of the engine by published relations. */

import { STANDARD_GRAVITY } from '../../physics/constants.ts';
import { engineMass, MASS_RANGE, type MassBand } from '../../physics/cycle/index.ts';
import type { EngineSolution } from '../solution.ts';
import { engineFiguresAt } from './cycleFigures.ts';
import { noFigure } from './noFigure.ts';

export const MASS_SOURCE =
  'the lower of two published relations less 30 %, the higher and 35 %: public engines lie between (docs/methods/cycle.md)';

/**
 * @param scale [–] of the engine: throat, thrust and exit by the same factor
 * @throws ProblemError where the relations do not reach
 */
export function massOf(solution: EngineSolution, scale = 1): MassBand {
  const { stated, pumped } = solution.cycle();
  if (stated.kind === 'pressureFed' || stated.kind === 'electricPump') {
    return noFigure(
      'The published relations are for engines whose pumps a turbine drives.',
      'Ask cycle.tankMass or cycle.batteryMass, or a cycle with a turbine.',
    );
  }
  const thrust = scale * engineFiguresAt(solution, 0, null).thrust;
  if (thrust < MASS_RANGE.from || thrust > MASS_RANGE.to) {
    return noFigure(
      'The published relations are for thrusts of 10 kN to 10 MN.',
      'Change the size of the engine, or state its mass yourself.',
    );
  }
  const isHydrogen = Object.keys(pumped.fed.fuel.elements).join() === 'H';
  return engineMass(thrust, solution.nozzle.spec.areaRatio, isHydrogen);
}

export const massFigures = {
  engine: (solution: EngineSolution): number => massOf(solution).value,
  thrustToWeight: (solution: EngineSolution): number =>
    engineFiguresAt(solution, 0, null).thrust / (massOf(solution).value * STANDARD_GRAVITY),
} as const;
