/** One pair of hands: a study and its data, from which anything is told at any point. */

import type { Outcome } from '../../numerics/problem.ts';
import type { Study } from '../../study/model.ts';
import type { Materials } from '../materials.ts';
import type { EngineSolution } from '../solution.ts';
import type { Point } from './crew.ts';
import { engineStates } from './engineStates.ts';
import type { Ask, Told } from './model.ts';
import { tell } from './tell.ts';
import { tellAir } from './tellAir.ts';
import { tellVehicle } from './tellVehicle.ts';
import { vehicleStates } from './vehicleStates.ts';
import { withPoint } from './withPoint.ts';

/** @throws ProblemError `input-not-stated` where the point names a number that the study does not state */
export function workmate(
  study: Study,
  materials: Materials,
): (asks: readonly Ask[], point: Point) => readonly Told[] {
  const states = engineStates(materials);
  const vehicles = vehicleStates(study, states);
  const vehicleIds = new Set(study.vehicles.map(({ id }) => id));
  return (asks, point) => {
    const there = withPoint(study, point);
    const found = new Map<string, Outcome<EngineSolution>>();
    return asks.map((ask) => {
      if (ask.engine === null) return tellAir(ask);
      if (vehicleIds.has(ask.engine)) {
        const state = vehicles.at(there, ask);
        return state.ok ? tellVehicle(state.value, ask) : { ok: false, problem: state.problem };
      }
      const key = JSON.stringify([ask.engine, ask.throttle, ask.inputs]);
      const solution = found.get(key) ?? states.at(there, ask.engine, ask);
      found.set(key, solution);
      return solution.ok ? tell(solution.value, ask) : { ok: false, problem: solution.problem };
    });
  };
}
