/** What several lists have in common, said once, and what is left of each. */

export interface SaidOnce {
  /** In every list that has any line, in the order of the first. */ readonly common: readonly string[];
  /** What each list has besides. */ readonly rest: (lines: readonly string[]) => readonly string[];
}

/** Of a single list nothing is common: it says all itself. */
export function saidOnce(lists: readonly (readonly string[])[]): SaidOnce {
  const [first, ...others] = lists.filter((lines) => lines.length > 0);
  const common =
    first === undefined || others.length === 0
      ? []
      : first.filter((line) => others.every((lines) => lines.includes(line)));
  return { common, rest: (lines) => lines.filter((line) => !common.includes(line)) };
}
