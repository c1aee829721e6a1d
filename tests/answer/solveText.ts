import type { EngineAnswer } from '../../src/answer/model.ts';
import { type SolvedStudy, type SolveOptions, solveStudyLive } from '../../src/answer/solve.ts';
import { openDataShelf } from '../../src/faces/disk/data.ts';
import { knownNames, readStudy, type Study } from '../../src/study/index.ts';

export const shelf = openDataShelf();

/** Reads a study from its text; a problem in it fails the test with the problem's words. */
export async function studyOf(engines: string, rest = ''): Promise<Study> {
  const text = `plumeline: 1\nquestion: Which one?\nengines:\n${engines.replace(/^(?=.)/gm, '  ')}\n${rest}\n`;
  const outcome = readStudy(text, { file: 'study.yaml', ...knownNames(await shelf.propellants()) });
  if (!outcome.ok) throw new Error(outcome.problems.map(({ what, mend }) => `${what} ${mend}`).join('\n'));
  return outcome.study;
}

/** Engines as YAML at column 0; `rest` are further top-level keys. */
export async function solveText(
  engines: string,
  rest = '',
  options: SolveOptions = {},
): Promise<SolvedStudy> {
  return solveStudyLive(await studyOf(engines, rest), shelf, options);
}

/** The only engine of a study, solved. */
export async function solveOne(engine: string, options: SolveOptions = {}): Promise<EngineAnswer> {
  const { answer } = await solveText(`one: ${engine}`, '', options);
  const { one } = answer.engines;
  if (one === undefined) throw new Error(`${answer.failed.one?.what} ${answer.failed.one?.mend}`);
  return one;
}
