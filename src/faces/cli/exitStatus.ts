/** What the program's exit status means; scripts and version control rely on it. */
export const EXIT = {
  /** Answered. */ answered: 0,
  /** Answered, but something the study asks for could not be computed, or a sentence that is said fails. */ incomplete: 1,
  /** Bad input: an unreadable study, an unknown option. */ badInput: 2,
} as const;

export type ExitStatus = (typeof EXIT)[keyof typeof EXIT];
