/** The starters and the example, read and checked in this thread. */

import { readFileSync } from 'node:fs';
import { localCrew } from '../../../src/answer/asked/localCrew.ts';
import { type CheckedSentence, checkSentences } from '../../../src/answer/sentences/index.ts';
import { editStudy, knownNames, readStudy, type Study, type StudyEdit } from '../../../src/study/index.ts';
import { shelf } from '../solveText.ts';

const root = new URL('../../../', import.meta.url);
const names = knownNames(await shelf.propellants());

/** Points at which engines are solved: enough for the same verdicts, except beside a line that a surface must meet closely. */
const FEW_POINTS = 10;
const NEEDS_ALL_POINTS: readonly string[] = ['choking'];

export function starterText(name: string): string {
  const folder = name === 'alder-booster' ? 'examples' : 'starters';
  return readFileSync(new URL(`${folder}/${name}/study.yaml`, root), 'utf8');
}

export function studyFrom(text: string): Study {
  const outcome = readStudy(text, { file: 'study.yaml', ...names });
  if (!outcome.ok) throw new Error(outcome.problems.map(({ what, mend }) => `${what} ${mend}`).join('\n'));
  return outcome.study;
}

/** The text with one value set, as the workbench sets it. */
export const textWith = (text: string, edit: StudyEdit): string => editStudy(text, [edit], names);

export async function checkedStarter(name: string, study: Study): Promise<readonly CheckedSentence[]> {
  return checkSentences(study, await localCrew(study, shelf), {
    flips: false,
    ...(NEEDS_ALL_POINTS.includes(name) ? {} : { mostSolved: FEW_POINTS }),
  });
}
