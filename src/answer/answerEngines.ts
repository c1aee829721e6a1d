/** The engines of a study solved and answered one by one, and what they come to side by side. */

import { attempt, type Problem } from '../numerics/problem.ts';
import type { Study } from '../study/model.ts';
import { shortAnswerAbout } from './compare/shortAnswer.ts';
import { compareEngines } from './compare.ts';
import { engineAnswer, type Jets, refuseNonFinite, type Wanted } from './engineAnswer.ts';
import { comparedFirst, comparedIds, sizeCircle } from './engineOrder.ts';
import type { Materials } from './materials.ts';
import type { Comparison, EngineAnswer, ShortAnswer } from './model.ts';
import { solvePublished } from './published/solvePublished.ts';
import type { Reused } from './reuse.ts';
import type { EngineSolution } from './solution.ts';
import type { AnswerPiece, SolveOptions } from './solveModel.ts';

export interface AnsweredEngines {
  /** In the order of the study. */ readonly engines: Record<string, EngineAnswer>;
  readonly failed: Record<string, Problem>;
  /** Of those that are answered. */ readonly solutions: Map<string, EngineSolution>;
  readonly comparison: Comparison | null;
}

/** Each engine solved and answered before the next; the comparison as soon as its two are there. */
export async function answerEngines(
  study: Study,
  materials: Materials,
  withoutData: ReadonlyMap<string, Problem>,
  reused: Reused,
  wanted: Wanted,
  options: SolveOptions,
): Promise<AnsweredEngines> {
  const failed: Record<string, Problem> = {};
  /** Engines that others may take their size from: also those that cannot be answered. */
  const solved = new Map<string, EngineSolution>();
  const answers = new Map<string, { readonly answer: EngineAnswer; readonly isWhole: boolean }>();
  const answered = (): Map<string, EngineSolution> => new Map([...solved].filter(([id]) => answers.has(id)));
  const tell = async (piece: AnswerPiece): Promise<void> => {
    if (options.onPiece === undefined) return;
    refuseNonFinite(piece.kind === 'engine' ? piece.answer : piece, piece.kind);
    await options.onPiece(piece);
  };
  const fail = async (id: string, problem: Problem): Promise<void> => {
    failed[id] = problem;
    answers.delete(id);
    await tell({ kind: 'failed', id, problem });
  };
  const answerOf = async (id: string, solution: EngineSolution, jets: Jets): Promise<void> => {
    const known = reused.answerOf(id, wanted);
    if (known === null) await options.pause?.();
    const outcome =
      known === null
        ? attempt(() => engineAnswer(solution, wanted, study.sources, jets))
        : ({ ok: true, value: known } as const);
    if (!outcome.ok) return fail(id, outcome.problem);
    const isWhole = known !== null || jets === 'all';
    answers.set(id, { answer: outcome.value, isWhole });
    await tell({ kind: 'engine', id, answer: outcome.value, solution, isWhole });
  };

  const { ordered, circle } = comparedFirst(study);
  for (const { id } of circle) await fail(id, sizeCircle(circle, id));
  let comparison: Comparison | null = null;
  let [which, compared] = [0, ordered.compared.length];
  const compare = async (): Promise<void> => {
    await options.pause?.();
    comparison = comparisonOf(study, answered(), wanted.altitudes);
    const shortAnswer = shortAnswerFor(comparison, study, answered(), failed);
    await tell({ kind: 'compared', comparison, shortAnswer });
  };
  for (const engine of [...ordered.compared, ...ordered.others]) {
    const { id } = engine;
    which += 1;
    options.onEngine?.(engine.name, which, study.engines.length);
    const known = reused.solutionOf(id);
    if (known === null) await options.pause?.();
    const problem = withoutData.get(id);
    const outcome = problem
      ? ({ ok: false, problem } as const)
      : attempt(() => known ?? solvePublished(engine, materials, solved));
    if (outcome.ok) {
      solved.set(id, outcome.value);
      await answerOf(id, outcome.value, options.jetsLater === true ? 'ends' : 'all');
    } else await fail(id, outcome.problem);
    compared -= 1;
    if (compared === 0) await compare();
  }
  for (const [id, { isWhole }] of answers) {
    const solution = solved.get(id);
    if (isWhole || solution === undefined) continue;
    await answerOf(id, solution, 'all');
    // One of the two that failed at its jets is compared no more.
    if (!answers.has(id) && comparedIds(study).includes(id)) await compare();
  }
  const engines: Record<string, EngineAnswer> = {};
  for (const { id } of study.engines) {
    const one = answers.get(id);
    if (one !== undefined) engines[id] = one.answer;
  }
  return { engines, failed, solutions: answered(), comparison };
}

function comparisonOf(
  study: Study,
  solutions: ReadonlyMap<string, EngineSolution>,
  asked: readonly number[],
): Comparison | null {
  const [base, other] = comparedIds(study).map((id) => solutions.get(id ?? ''));
  return base && other && base !== other ? compareEngines(base, other, asked) : null;
}

export function shortAnswerFor(
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
