/** A study in, its answer out. */

import { attempt, type Problem, ProblemError } from '../numerics/problem.ts';
import type { EngineInput, Study } from '../study/model.ts';
import { CAUTION, hazardsOf, SOLID_MIXTURE_HAZARD } from './caution.ts';
import { shortAnswerAbout } from './compare/shortAnswer.ts';
import { compareEngines } from './compare.ts';
import { engineAnswer, refuseNonFinite, type Wanted } from './engineAnswer.ts';
import { vehicleAnswer } from './flight/index.ts';
import type { VehicleAnswer } from './flight/model.ts';
import { gatherMaterials, ingredientsOf, type Materials } from './materials.ts';
import type { Comparison, EngineAnswer, EnginesAnswer, ShortAnswer, StudyAnswer } from './model.ts';
import { solvePublished } from './published/solvePublished.ts';
import { type Reused, reusedFrom, type SolvedBefore } from './reuse.ts';
import type { DataShelf } from './shelf.ts';
import type { EngineSolution } from './solution.ts';
import { withVehicles } from './withVehicles.ts';

export interface SolveOptions {
  /** Version of the program, for the answer's head. */ readonly version?: string;
  /** [Pa] besides the study's */ readonly ambients?: readonly number[];
  /** [m] geometric, besides the study's and the standard ones */ readonly altitudes?: readonly number[];
  /** Told before each engine is solved: its name, which it is, of how many. */
  readonly onEngine?: (name: string, which: number, count: number) => void;
  /** Waited for between pieces of the work, none much longer than one engine or one vehicle; where it throws, the work ends. */
  readonly pause?: () => Promise<void>;
  /** A study solved before: what is the same in this one is taken over, and is the same as a fresh solve gives. */
  readonly before?: SolvedBefore;
  /** Told of the engines as soon as they are answered, where vehicles are still to be flown with them. */
  readonly onEngines?: (solved: SolvedEngines) => void | Promise<void>;
}

/** A study whose vehicles are not flown yet. */
export interface SolvedEngines extends Pick<SolvedStudy, 'solutions' | 'wanted'> {
  readonly answer: EnginesAnswer;
}

/** The answer, and the live engines behind it from which more rows and curves can be asked. */
export interface SolvedStudy {
  readonly answer: StudyAnswer;
  readonly solutions: ReadonlyMap<string, EngineSolution>;
  /** Conditions that its rows were asked at, besides the standard ones. */ readonly wanted: Wanted;
}

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
  const { solutions, failed } = await solveEngines(study.engines, materials, withoutData, reused, options);
  const wanted = wantedOf(study, options);
  const engines: Record<string, EngineAnswer> = {};
  for (const { id } of study.engines) {
    const solution = solutions.get(id);
    if (solution === undefined) continue;
    const known = reused.answerOf(id, wanted);
    if (known !== null) {
      engines[id] = known;
      continue;
    }
    await options.pause?.();
    const outcome = attempt(() => engineAnswer(solution, wanted, study.sources));
    if (outcome.ok) {
      engines[id] = outcome.value;
    } else {
      failed[id] = outcome.problem;
      solutions.delete(id);
    }
  }
  await options.pause?.();
  const comparison = comparisonOf(study, solutions, wanted.altitudes);
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

async function solveEngines(
  engines: readonly EngineInput[],
  materials: Materials,
  withoutData: ReadonlyMap<string, Problem>,
  reused: Reused,
  options: SolveOptions,
): Promise<{ solutions: Map<string, EngineSolution>; failed: Record<string, Problem> }> {
  const solutions = new Map<string, EngineSolution>();
  const failed: Record<string, Problem> = {};
  let which = 0;
  for (const engine of inOrderOfSize(engines, failed)) {
    which += 1;
    options.onEngine?.(engine.name, which, engines.length);
    const known = reused.solutionOf(engine.id);
    if (known !== null) {
      solutions.set(engine.id, known);
      continue;
    }
    await options.pause?.();
    const problem = withoutData.get(engine.id);
    const outcome = problem
      ? ({ ok: false, problem } as const)
      : attempt(() => solvePublished(engine, materials, solutions));
    if (outcome.ok) solutions.set(engine.id, outcome.value);
    else failed[engine.id] = outcome.problem;
  }
  return { solutions, failed };
}

/** Engines that take their size from another come after it; those in a circle have none and fail. */
function inOrderOfSize(
  engines: readonly EngineInput[],
  failed: Record<string, Problem>,
): readonly EngineInput[] {
  const ordered: EngineInput[] = [];
  let waiting = [...engines];
  while (waiting.length > 0) {
    const ready = waiting.filter(({ size }) => {
      return size.by !== 'same' || !waiting.some((other) => other.id === size.as);
    });
    if (ready.length === 0) break;
    ordered.push(...ready);
    waiting = waiting.filter((engine) => !ready.includes(engine));
  }
  for (const { id } of waiting) {
    failed[id] = {
      code: 'size-circle',
      what: `The engines ${waiting.map((engine) => engine.id).join(', ')} take their size from each other in a circle.`,
      mend: 'Give one of them a throat, an exit or a thrust.',
      where: `engines.${id}.size`,
    };
  }
  return ordered;
}

/** The pair the study names, else its first two engines. */
function comparisonOf(
  study: Study,
  solutions: ReadonlyMap<string, EngineSolution>,
  asked: readonly number[],
): Comparison | null {
  const [first, second] = study.engines;
  const base = solutions.get(study.compare?.base ?? first?.id ?? '');
  const other = solutions.get(study.compare?.other ?? second?.id ?? '');
  return base && other && base !== other ? compareEngines(base, other, asked) : null;
}

function shortAnswerFor(
  comparison: Comparison | null,
  study: Study,
  solutions: ReadonlyMap<string, EngineSolution>,
  failed: Readonly<Record<string, Problem>>,
): ShortAnswer {
  if (comparison) return comparison.answer;
  const lone = study.engines.find(({ id }) => solutions.has(id));
  const solution = lone && solutions.get(lone.id);
  if (solution) {
    const about = shortAnswerAbout(solution);
    const missing = Object.keys(failed);
    return missing.length === 0
      ? about
      : { ...about, verdict: `No comparison: ${missing.join(', ')} could not be computed` };
  }
  const [problem] = Object.values(failed);
  return {
    verdict: 'No answer',
    text: problem ? `No engine of this study could be computed. ${problem.what}` : 'The study has no engine.',
  };
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
