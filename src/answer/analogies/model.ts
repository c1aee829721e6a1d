/** What is found about an analogy of a study. SI units. */

import type { Problem } from '../../numerics/problem.ts';
import type { Verdict } from '../sentences/model.ts';

/** A relation of the catalogue that something is tied to. */
export interface Relation {
  /** Name in the catalogue. */ readonly quantity: string;
  readonly label: string;
  readonly equation: string;
  readonly source: string;
}

export interface CheckedStand {
  readonly this: string;
  readonly for: string;
  /** Null where the study names none, or one that the catalogue does not have. */ readonly relation: Relation | null;
}

/** A thing with what it is tied to, or why its relation is none. */
export interface TiedStand {
  readonly stand: CheckedStand;
  readonly unknown: Problem | null;
}

export type LegVerdict =
  | 'right'
  /** In a part of the range, or of what is not known. */
  | 'partly right'
  | 'wrong'
  | 'can’t tell'
  | 'not tested';

/** How steep a quantity is in its input: y goes like x to this power. */
export interface Steepness {
  /** Over the whole range, by least squares of the logarithms [–] */ readonly whole: number;
  /** In the lower half of the range, in equal ratios… */ readonly low: number;
  /** …and in the upper. */ readonly high: number;
}

export interface CheckedLeg {
  readonly say: string;
  readonly main: boolean;
  readonly verdict: LegVerdict;
  /** What the leg claims, as a test or a course: `bell.massFlow goes up with …`; null where nothing tests it. */
  readonly claim: string | null;
  /** What is found, one line. */ readonly found: string;
  /** Share of what is not known in which its test holds [–]; null where it is a course. */ readonly share:
    | number
    | null;
  /** Null where it is a test, or has no logarithm. */ readonly steepness: Steepness | null;
  /** Where the course was followed: from … to …, at so many points; empty for a test. */
  readonly conditions: readonly string[];
  readonly relations: readonly Relation[];
  readonly problem: Problem | null;
}

export interface CheckedBreak {
  readonly say: string;
  /** As written; null where it is words alone. */ readonly when: string | null;
  /** Whether it breaks in this study; null where that cannot be told, or is not asked. */ readonly here:
    | boolean
    | null;
  readonly problem: Problem | null;
}

export interface CheckedAnalogy {
  readonly id: string;
  readonly say: string;
  readonly said: boolean;
  readonly verdict: Exclude<Verdict, 'reported'>;
  readonly stands: readonly CheckedStand[];
  readonly legs: readonly CheckedLeg[];
  readonly holdsFor: string;
  readonly breaksWhere: readonly CheckedBreak[];
  /** How to say it, with where it holds and what of it is not so; null where it is not to be said. */
  readonly wording: string | null;
  /** One line: why this verdict. */ readonly why: string;
  readonly problem: Problem | null;
  readonly sources: readonly string[];
}
