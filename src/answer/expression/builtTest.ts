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

/** The verdict over several: one that fails decides an `and`, whatever is absent beside it. */
export function allOf(tests: readonly BuiltTest[]): Pick<BuiltTest, 'holds' | 'margin' | 'absent'> {
  return {
    holds: (values) => {
      let sure = true;
      for (const test of tests) {
        const one = test.holds(values);
        if (one === false) return false;
        if (one === null) sure = false;
      }
      return sure ? true : null;
    },
    margin: (values) => {
      let least = Number.POSITIVE_INFINITY;
      let fails = false;
      let sure = true;
      for (const test of tests) {
        const one = test.margin(values);
        if (Number.isNaN(one)) sure = false;
        else {
          least = Math.min(least, one);
          if (one <= 0 && test.holds(values) === false) fails = true;
        }
      }
      return fails || sure ? least : Number.NaN;
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

/** One that holds decides an `or`. */
export function anyOf(tests: readonly BuiltTest[]): Pick<BuiltTest, 'holds' | 'margin' | 'absent'> {
  const none = allOf(tests.map(opposite));
  return opposite({ ...none, explain: () => undefined });
}

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
