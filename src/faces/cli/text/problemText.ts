import type { Problem } from '../../../numerics/problem.ts';
import type { StudyProblem } from '../../../study/model.ts';
import { wrapped } from './wrap.ts';

/** What is wrong, why it matters, what to do: three short paragraphs, no colour. */
export function problemText(problem: Problem, width: number): string {
  return [problem.what, problem.why, problem.mend]
    .filter((part) => part !== undefined && part !== '')
    .map((part, i) => wrapped(part ?? '', width, i === 0 ? '' : '  '))
    .join('\n');
}

/** `study.yaml:7:12: what`, as editors and terminals make it clickable. */
export function studyProblemText(problem: StudyProblem, width: number): string {
  const place = problem.place ? `:${problem.place.line}:${problem.place.column}` : '';
  const head = `${problem.file}${place}: `;
  const rest = [problem.why, problem.mend]
    .filter((part) => part !== undefined && part !== '')
    .map((part) => wrapped(part ?? '', width, '  '));
  return [wrapped(problem.what, width, '  ', head), ...rest].join('\n');
}
