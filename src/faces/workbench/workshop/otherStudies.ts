/** Numbers of studies that are not open: of each engine asked for, solved for the purpose and kept a while. */

import type { Ask, Told } from '../../../answer/asked/model.ts';
import { tell } from '../../../answer/asked/tell.ts';
import type { DataShelf } from '../../../answer/shelf.ts';
import type { EngineSolution } from '../../../answer/solution.ts';
import { solveStudyLive } from '../../../answer/solve.ts';
import type { Problem } from '../../../numerics/problem.ts';
import type { Study } from '../../../study/model.ts';
import { type ReadOptions, readStudy } from '../../../study/read.ts';
import { nextTask } from './nextTask.ts';

const MOST_KEPT = 4;

/** Tells a number of an engine of the study with this text. */
export function otherStudies(
  shelf: DataShelf,
  readOptions: () => Promise<ReadOptions>,
): (text: string, ask: Ask) => Promise<Told> {
  const kept = new Map<string, EngineSolution>();

  async function solutionOf(text: string, id: string): Promise<EngineSolution | Problem> {
    const key = `${id}\n${text}`;
    const known = kept.get(key);
    if (known !== undefined) return known;
    const read = readStudy(text, await readOptions());
    if (!read.ok) return read.problems[0] ?? NOT_THERE;
    const { answer, solutions } = await solveStudyLive(onlyFor(read.study, id), shelf, { pause: nextTask });
    const solution = solutions.get(id);
    if (solution === undefined) return answer.failed[id] ?? NOT_THERE;
    kept.set(key, solution);
    for (const oldest of kept.keys()) if (kept.size > MOST_KEPT) kept.delete(oldest);
    return solution;
  }

  return async (text, ask) => {
    const found = await solutionOf(text, ask.engine ?? '');
    return 'code' in found ? { ok: false, problem: found } : tell(found, ask);
  };
}

const NOT_THERE: Problem = {
  code: 'engine-without-result',
  what: 'There is no such engine.',
  mend: 'Open that study.',
};

/** The study with this engine and those that it takes its size from alone. */
function onlyFor(study: Study, id: string): Study {
  const wanted = new Set<string>();
  for (let next: string | null = id; next !== null && !wanted.has(next); ) {
    wanted.add(next);
    const engine = study.engines.find((each) => each.id === next);
    next = engine?.size.by === 'same' ? engine.size.as : null;
  }
  return {
    ...study,
    engines: study.engines.filter((engine) => wanted.has(engine.id)),
    vehicles: [],
    compare: null,
  };
}
