import type { Problem } from '../../numerics/problem.ts';
import type { StudyProblem } from '../../study/model.ts';

/** Ends a command with exit status 2: what was given cannot be used. */
export class BadInput extends Error {
  readonly problems: readonly (Problem | StudyProblem)[];
  constructor(problems: readonly (Problem | StudyProblem)[]) {
    super(problems.map((problem) => problem.what).join(' '));
    this.name = 'BadInput';
    this.problems = problems;
  }
}
