/** A study in, its answer out. */

import { type Problem, ProblemError } from '../numerics/problem.ts';
import type { EngineInput, Study } from '../study/model.ts';
import { answerEngines, shortAnswerFor } from './answerEngines.ts';
import { CAUTION, hazardsOf, SOLID_MIXTURE_HAZARD } from './caution.ts';
import { refuseNonFinite, type Wanted } from './engineAnswer.ts';
import { vehicleAnswer } from './flight/index.ts';
import type { VehicleAnswer } from './flight/model.ts';
import { gatherMaterials, ingredientsOf, type Materials } from './materials.ts';
import type { EnginesAnswer, StudyAnswer } from './model.ts';
import { reusedFrom } from './reuse.ts';
import type { DataShelf } from './shelf.ts';
import type { EngineSolution } from './solution.ts';
import type { SolvedStudy, SolveOptions } from './solveModel.ts';
import { withVehicles } from './withVehicles.ts';

export type { AnswerPiece, SolvedEngines, SolvedStudy, SolveOptions } from './solveModel.ts';

export async function solveStudy(
  study: Study,
  shelf: DataShelf,
  options: SolveOptions = {},
): Promise<StudyAnswer> {
  return (await solveStudyLive(study, shelf, options)).answer;
}

export async function solveStudyLive(
  study: Study,
  shelf: DataShelf,
  options: SolveOptions = {},
): Promise<SolvedStudy> {
  const { materials, failed: withoutData } = await materialsFor(study.engines, shelf);
  const reused = reusedFrom(options.before, study);
  const wanted = wantedOf(study, options);
  const found = await answerEngines(study, materials, withoutData, reused, wanted, options);
  const { engines, failed, solutions, comparison } = found;
  const answer: EnginesAnswer = {
    format: 'plumeline answer 1',
    program: { name: 'plumeline', version: options.version ?? 'unknown' },
    caution: CAUTION,
    question: study.question,
    engines,
    failed,
    shortAnswer: shortAnswerFor(comparison, study, solutions, failed),
    comparison,
    notModelled: notModelledOf(study),
    hazards: hazardsFor([...solutions.values()]),
  };
  refuseNonFinite(answer, 'answer');
  let vehicles = study.vehicles.length === 0 ? [] : reused.vehicles(solutions);
  if (vehicles === null) {
    await options.onEngines?.({ answer, solutions, wanted });
    vehicles = await vehiclesOf(study, solutionFrom(solutions, failed), options);
    refuseNonFinite(vehicles, 'answer.vehicles');
  }
  return { answer: withVehicles(answer, vehicles), solutions, wanted };
}

/** Conditions that the rows of its answer are at, besides the standard ones. */
export function wantedOf(study: Study, { altitudes = [], ambients = [] }: SolveOptions = {}): Wanted {
  return {
    altitudes: [...study.altitudes.map(({ value }) => value), ...altitudes],
    ambients: [...study.ambients.map(({ value }) => value), ...ambients],
  };
}

/** Engines whose elements the data does not hold fail alone; the others still get their rows. */
async function materialsFor(
  engines: readonly EngineInput[],
  shelf: DataShelf,
): Promise<{ materials: Materials; failed: Map<string, Problem> }> {
  const failed = new Map<string, Problem>();
  let materials = await gatherMaterials([], shelf);
  for (const engine of engines) {
    try {
      materials = await gatherMaterials([engine], shelf, materials);
    } catch (error) {
      if (!(error instanceof ProblemError) || error.problem.code.startsWith('data-file')) throw error;
      failed.set(engine.id, error.problem);
    }
  }
  return { materials, failed };
}

async function vehiclesOf(
  study: Study,
  solutionOf: (id: string) => EngineSolution,
  { pause }: SolveOptions,
): Promise<readonly VehicleAnswer[]> {
  const answers: VehicleAnswer[] = [];
  for (const vehicle of study.vehicles) {
    await pause?.();
    answers.push(vehicleAnswer(vehicle, study, solutionOf));
  }
  return answers;
}

function solutionFrom(
  solutions: ReadonlyMap<string, EngineSolution>,
  failed: Readonly<Record<string, Problem>>,
): (id: string) => EngineSolution {
  return (id) => {
    const solution = solutions.get(id);
    if (solution !== undefined) return solution;
    throw new ProblemError(failed[id]!);
  };
}

function notModelledOf({ vehicles }: Study): readonly string[] {
  if (vehicles.length > 0) return NOT_MODELLED;
  return ['Flight: the study states no vehicle for the engines to lift.', ...NOT_MODELLED];
}

const NOT_MODELLED: readonly string[] = [
  'Noise, mixing of the jet with the air, and what the flow around a vehicle does to the exit.',
];

function hazardsFor(solutions: readonly EngineSolution[]): readonly string[] {
  const known = hazardsOf(solutions.flatMap(({ records }) => records));
  const own = new Set(
    solutions.flatMap(({ input }) =>
      ingredientsOf(input.propellants).flatMap(({ id, custom }) => (custom === null ? [] : [id])),
    ),
  );
  const mixed = solutions.some(({ input }) => input.propellants.kind === 'mixed');
  return [
    ...known,
    ...[...own].map(
      (id) => `${id}: described by the study itself; its hazards are not known to this program.`,
    ),
    ...(mixed ? [SOLID_MIXTURE_HAZARD] : []),
  ];
}
