/**
 * What could not be computed, in words a user can act on.
 *
 * `what` says which input, which value and which range; `why` says why it matters;
 * `mend` says what to do about it. `where` is a place: a path in the study, a station, an engine.
 */
export interface Problem {
  /** Stable kebab-case class of the problem, e.g. `temperature-above-range`. */
  readonly code: string;
  readonly what: string;
  readonly why?: string;
  readonly mend: string;
  readonly where?: string;
  /** The numbers behind the words, SI units. */
  readonly facts?: Readonly<Record<string, number | string>>;
}

/** Thrown by the physics when an input lies outside what a model covers. Carries a {@link Problem}. */
export class ProblemError extends Error {
  readonly problem: Problem;
  constructor(problem: Problem) {
    super(`${problem.what} ${problem.mend}`);
    this.name = 'ProblemError';
    this.problem = problem;
  }
}

/** A value, or the reason why there is none. */
export type Outcome<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problem: Problem };

/** Run `compute`; a {@link ProblemError} becomes a value, any other error is a bug and passes through. */
export function attempt<T>(compute: () => T): Outcome<T> {
  try {
    return { ok: true, value: compute() };
  } catch (error) {
    if (error instanceof ProblemError) return { ok: false, problem: error.problem };
    throw error;
  }
}
