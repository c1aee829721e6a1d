/** One engine solved, together with what its published rows settle. */

import { ProblemError } from '../../numerics/problem.ts';
import type { NozzleModel } from '../../physics/nozzle/model.ts';
import type { EngineInput, SettledInput } from '../../study/model.ts';
import { show } from '../display.ts';
import type { Materials } from '../materials.ts';
import type { EngineSolution } from '../solution.ts';
import { solveEngine } from '../solveEngine.ts';
import { workingGas } from '../workingGas.ts';
import { computedInput } from './computedValue.ts';
import { sought, withInput } from './settledInput.ts';
import { type Settled, settleByRows } from './solveFor.ts';
import { bandWords } from './solveProblems.ts';

/**
 * An engine that leaves an input to its published rows takes what they settle; one that states it keeps its own, and
 * the answer sets the two side by side.
 *
 * @throws ProblemError where the engine cannot be computed, or leaves an input to rows that settle none
 */
export function solvePublished(
  input: EngineInput,
  materials: Materials,
  others: ReadonlyMap<string, EngineSolution>,
): EngineSolution {
  const solveFor = input.published?.solveFor ?? null;
  if (input.published === null || solveFor === null) return solveEngine(input, materials, others);
  const solveWith = solverOf(input, solveFor.input, materials, others);
  const settled = settleByRows(input, input.published.rows, solveFor, solveWith);
  if (solveFor.stated) return withSettled(solveWith(input), settled);
  if (settled.problem !== null || settled.input === null) {
    throw new ProblemError({
      code: 'published-rows-settle-nothing',
      what: 'The published rows settle no value.',
      mend: 'State the input in the engine.',
      where: solveFor.path,
      ...settled.problem,
    });
  }
  return withSettled(solveWith(withInput(input, solveFor.input, settled.input)), settled);
}

/** Solves the engine with one input moved, whatever does not move with that input solved once. */
function solverOf(
  input: EngineInput,
  settled: SettledInput,
  materials: Materials,
  others: ReadonlyMap<string, EngineSolution>,
): (engine: EngineInput) => EngineSolution {
  const gas = settled === 'chamberPressure' ? undefined : workingGas(input, materials);
  const sizeFree = settled !== 'chamberPressure' && settled !== 'areaRatio';
  let nozzle: NozzleModel | undefined;
  return (engine) => {
    const solution = solveEngine(engine, materials, others, { gas, nozzle });
    if (sizeFree) nozzle = solution.nozzle;
    return solution;
  };
}

function withSettled(solution: EngineSolution, { solve, problem }: Settled): EngineSolution {
  const used = computedInput(solution, solve.quantity);
  const { words } = sought[solution.input.published!.solveFor!.input];
  const note = `The ${words} is left to the published rows, which allow ${bandWords(solve.quantity, solve.bands)}; ${show(solve.quantity, used).text} is used.`;
  return {
    ...solution,
    notes: solve.stated ? solution.notes : [note, ...solution.notes],
    publishedSolve: { ...solve, used },
    publishedSolveProblem: problem,
  };
}
