/** Problems of a study file on their way to the reader: each with its place, each only once. */
import type { Problem } from '../numerics/problem.ts';
import type { Place, StudyProblem } from './model.ts';

const SHOWN = 60;

/** Untrusted text for a message: one line, no control or direction signs, at most 60 characters, in quotes. */
export function quote(text: string): string {
  const line = text
    .replace(/[\p{Cc}\p{Zl}\p{Zp}]+/gu, ' ')
    .replace(/[\u200e\u200f\u202a-\u202e\u2066-\u2069]/g, '')
    .trim();
  const signs = [...line];
  return `“${signs.length > SHOWN ? `${signs.slice(0, SHOWN - 1).join('')}…` : line}”`;
}

/** Names for a message: `a, b or c`; a long list is cut and says so. */
export function listNames(names: Iterable<string>, most = 60): string {
  const all = [...new Set(names)];
  if (all.length === 0) return 'none';
  if (all.length > most) return `${all.slice(0, most).join(', ')} and ${all.length - most} more`;
  return all.length === 1 ? all[0]! : `${all.slice(0, -1).join(', ')} or ${all.at(-1)!}`;
}

export interface Report {
  problem(problem: Problem, path: string, offset: number | null): void;
  warning(problem: Problem, path: string, offset: number | null): void;
  readonly problems: readonly StudyProblem[];
  readonly warnings: readonly StudyProblem[];
}

/** More problems than anybody mends at once; the rest is counted in the last one. */
const MOST_PROBLEMS = 100;

export function newReport(file: string, placeOf: (offset: number) => Place): Report {
  const seen = new Set<string>();
  const problems: StudyProblem[] = [];
  const warnings: StudyProblem[] = [];
  let dropped = 0;
  const add = (list: StudyProblem[], problem: Problem, path: string, offset: number | null): void => {
    const place = offset === null ? null : placeOf(offset);
    const key = JSON.stringify([problem.code, path, place, problem.what]);
    if (seen.has(key)) return;
    seen.add(key);
    if (list.length >= MOST_PROBLEMS) dropped += 1;
    else {
      const line = place === null ? '' : `:${place.line}:${place.column}`;
      list.push({ ...problem, where: `${file}${line}${path === '' ? '' : ` (${path})`}`, file, place, path });
    }
  };
  const inOrder = (list: readonly StudyProblem[]): readonly StudyProblem[] =>
    [...list].sort(
      (a, b) =>
        (a.place?.line ?? 0) - (b.place?.line ?? 0) || (a.place?.column ?? 0) - (b.place?.column ?? 0),
    );
  return {
    problem: (problem, path, offset) => add(problems, problem, path, offset),
    warning: (problem, path, offset) => add(warnings, problem, path, offset),
    get problems() {
      const sorted = inOrder(problems);
      if (dropped === 0) return sorted;
      const more: StudyProblem = {
        code: 'more-problems',
        what: `${dropped} more problems are not listed.`,
        mend: 'Mend these first.',
        where: file,
        file,
        place: null,
        path: '',
      };
      return [...sorted, more];
    },
    get warnings() {
      return inOrder(warnings);
    },
  };
}

/** One problem as a line of plain text: `study.yaml:12:15: what, why, mend`. */
export function describeStudyProblem(problem: StudyProblem): string {
  const words = [problem.what, problem.why, problem.mend].filter((part) => part !== undefined).join(' ');
  return `${problem.where ?? problem.file}: ${words}`;
}
