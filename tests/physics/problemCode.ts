import { ProblemError } from '../../src/numerics/problem.ts';

/** The code of the problem that a computation meets, or `none`; any other error passes through. */
export function problemCode(compute: () => unknown): string {
  try {
    compute();
  } catch (error) {
    if (!(error instanceof ProblemError)) throw error;
    if (error.problem.mend.length === 0) throw new Error(`no mend in ${error.problem.code}`);
    return error.problem.code;
  }
  return 'none';
}
