/** What is to be looked at in a script, by the line that it stands on. */

import type { ScriptAnswer } from '../../../../telling/script/scriptAnswer.ts';

export interface LineFault {
  /** From 1. */ readonly line: number;
  /** It cannot be read, or must not be said so; else it is to be looked at. */ readonly fails: boolean;
  readonly words: string;
}

export function lineFaults({
  problems,
  flags,
}: Pick<ScriptAnswer, 'problems' | 'flags'>): readonly LineFault[] {
  const unread = problems.map(({ what, mend, place }) => ({
    line: place?.line ?? 1,
    fails: true,
    words: `${what} ${mend}`,
  }));
  const flagged = flags.map(({ fails, words, place }) => ({ line: place.line, fails, words }));
  return [...unread, ...flagged].sort((a, b) => a.line - b.line);
}
