/** A test ready to be decided: verdict, margin, and what to tell of either. */

import type { Absent, AskedValues, ComparedSides, Witness } from './model.ts';

/** What is told of a decision, gathered in the order of the text. */
export interface Findings {
  readonly sides: ComparedSides[];
  readonly witnesses: Witness[];
}

export interface BuiltTest {
  /** Null where a value that it hangs on is absent. */ readonly holds: (
    values: AskedValues,
  ) => boolean | null;
  /** NaN where `holds` is null; inside this folder only. */ readonly margin: (values: AskedValues) => number;
  readonly absent: (values: AskedValues) => Absent | null;
  readonly explain: (values: AskedValues, into: Findings) => void;
}

/** Several tests as one, but for what is told of it. */
export type JoinedTests = Pick<BuiltTest, 'holds' | 'margin' | 'absent'>;

/** One that fails decides an `and`, whatever is absent beside it. */
export const allOf = (tests: readonly BuiltTest[]): JoinedTests => joinedBy(tests, false);

/** One that holds decides an `or`. */
export const anyOf = (tests: readonly BuiltTest[]): JoinedTests => joinedBy(tests, true);

/** @param decides the verdict of one that is that of the whole */
function joinedBy(tests: readonly BuiltTest[], decides: boolean): JoinedTests {
  return {
    holds: (values) => {
      let sure = true;
      for (const test of tests) {
        const one = test.holds(values);
        if (one === decides) return decides;
        if (one === null) sure = false;
      }
      return sure ? !decides : null;
    },
    margin: (values) => {
      let least = Number.POSITIVE_INFINITY;
      let sure = true;
      for (const test of tests) {
        const margin = test.margin(values);
        if (Number.isNaN(margin)) sure = false;
        // A margin of exactly nothing stays so: the operator decides there.
        else least = Math.min(least, decides ? 0 - margin : margin);
      }
      if (!sure && !tests.some((test) => test.holds(values) === decides)) return Number.NaN;
      return decides ? 0 - least : least;
    },
    absent: (values) => firstAbsent(tests, values),
  };
}

function firstAbsent(tests: readonly BuiltTest[], values: AskedValues): Absent | null {
  for (const test of tests) {
    const absent = test.absent(values);
    if (absent !== null) return absent;
  }
  return null;
}

export const opposite = (test: BuiltTest): BuiltTest => ({
  holds: (values) => {
    const holds = test.holds(values);
    return holds === null ? null : !holds;
  },
  // A margin of exactly nothing stays so: the operator decides there.
  margin: (values) => 0 - test.margin(values),
  absent: test.absent,
  explain: test.explain,
});

/** Index of the test with the least (or the greatest) margin; −1 where none has one. */
export function mostTelling(tests: readonly BuiltTest[], values: AskedValues, sign: 1 | -1): number {
  let best = -1;
  let least = Number.POSITIVE_INFINITY;
  tests.forEach((test, i) => {
    const margin = sign * test.margin(values);
    if (margin < least) [best, least] = [i, margin];
  });
  return best;
}
