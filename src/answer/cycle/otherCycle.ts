/** A solved engine whose pumps are driven otherwise: what is solved of its chamber stays. */

import { onceOrProblem } from '../../numerics/once.ts';
import type { EngineInput } from '../../study/model.ts';
import type { EngineSolution } from '../solution.ts';
import type { ChamberNeeds } from './asStated.ts';
import { engineCycle } from './engineCycle.ts';

/** What a cycle needs of a solved engine. */
export function chamberNeeds(solution: EngineSolution): ChamberNeeds {
  const { input, fed, mixtureRatio, expansion, massFlow, losses } = solution;
  return {
    input,
    fed,
    mixtureRatio,
    chamberPressure: expansion.chamber.pressure,
    massFlow,
    wallHeat: losses.budget.layer?.heatFlow ?? null,
  };
}

/** The same engine with the cycle of `input`, which differs in nothing else. */
export function otherCycle(solution: EngineSolution, input: EngineInput): EngineSolution {
  if (solution.input === input) return solution;
  const cycle = onceOrProblem(() => engineCycle({ ...chamberNeeds(solution), input }));
  // What is found when first asked for must not be asked for here.
  return Object.defineProperties({} as EngineSolution, {
    ...Object.getOwnPropertyDescriptors(solution),
    ...Object.getOwnPropertyDescriptors({ input, cycle }),
  });
}
