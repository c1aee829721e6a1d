/** What a test or a plain expression becomes once it is compiled: what to ask, and how to decide from what is told. */

import type { Problem } from '../../numerics/problem.ts';
import type { Dimension as Exponents } from '../../study/unitTable.ts';
import type { Ask } from '../asked/model.ts';
import type { CatalogueEntry } from '../catalogue/entry.ts';

export type { Exponents };

/** Why a text cannot be compiled, and which part of it: offsets into the text, `end` behind the last sign. */
export interface ExpressionProblem extends Problem {
  readonly start: number;
  readonly end: number;
}

export type Compiled<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problem: ExpressionProblem };

/** An input that a text may set inside the brackets, e.g. `nozzle.areaRatio`. */
export interface SettableInput {
  /** As in the study below the engine. */ readonly name: string;
  readonly label: string;
  readonly dimension: Exponents;
  /** What the study form allows [SI]; null: no such end. */ readonly lowest: number | null;
  readonly highest: number | null;
  /** Whether the ends themselves are left out. */ readonly openBelow: boolean;
  readonly openAbove: boolean;
  /** Only whole numbers make sense. */ readonly whole: boolean;
  /** The same in words, e.g. `more than 1 and up to 1000`. */ readonly range: string;
}

/** What a text may name. */
export interface TestScope {
  /** Ids of the engines of the study. */ readonly engines: readonly string[];
  /** Ids of its vehicles. */ readonly vehicles: readonly string[];
  /** Entry of the catalogue by name or alias; some names mean another quantity where a place is named. */
  readonly quantity: (name: string, hasPlace: boolean) => CatalogueEntry | null;
  /** The known quantities that look most like the name. */
  readonly nearestQuantities: (name: string) => readonly string[];
  /** What may be set on that engine or vehicle. */
  readonly inputs: (engine: string) => readonly SettableInput[];
  /** Why this can never be told; null where it may be. */
  readonly askProblem: (ask: Ask) => Problem | null;
}

/** What was told of each ask of a compiled text, by its index; null where there was no value. */
export type AskedValues = ArrayLike<number | null>;

/** Why there is no value. */
export interface Absent {
  /** Index of the ask that had no value; null where the arithmetic has none (a division by nothing). */
  readonly ask: number | null;
  /** The part of the text, e.g. `bell.thrust(0 km)`. */ readonly expression: string;
  readonly why: string;
}

/** One number of the text that can be told by itself. */
export interface NamedNumber {
  /** As written. */ readonly expression: string;
  /** Name in the catalogue; null where it is made of several. */ readonly quantity: string | null;
  /** Index of the one ask it is; null where it is made of several. */ readonly ask: number | null;
  readonly dimension: Exponents;
  /** [SI]; null where something has no value. */ readonly evaluate: (values: AskedValues) => number | null;
}

export interface CompiledExpression extends NamedNumber {
  /** Of temperatures: the difference of two, for which the zero of a scale does not count. */
  readonly isDifference: boolean;
  readonly text: string;
  /** No two alike. */ readonly asks: readonly Ask[];
  readonly ranges: readonly TestedRange[];
  /** Why {@link NamedNumber.evaluate} gives null; null where it does not. */
  readonly absent: (values: AskedValues) => Absent | null;
}

export type RangeKind =
  | 'every'
  | 'some'
  | 'none'
  | 'rises'
  | 'falls'
  | 'does not rise'
  | 'does not fall'
  | 'constant'
  | 'highest'
  | 'lowest';

/** A value of a variable [SI], or vacuum. */
export type RangePlace = number | 'vacuum';

/** A range over which a test looks, point by point; what happens between two points is not seen. */
export interface TestedRange {
  readonly variable: string;
  readonly kind: RangeKind;
  /** What the variable is used for. */
  readonly of: 'altitude' | 'pressure' | 'time' | 'throttle' | 'input' | 'areaRatio' | 'distance' | 'number';
  /** Path of the input below its engine, where it is one. */ readonly input: string | null;
  readonly dimension: Exponents;
  readonly from: RangePlace;
  readonly to: RangePlace;
  /** The points tested, in order. */ readonly points: readonly RangePlace[];
  readonly spacing: 'even' | 'in equal ratios' | 'closer at the low end';
  /** e.g. `tested at 33 altitudes from the pad to vacuum` */ readonly words: string;
}

export type ComparisonOperator = '<' | '<=' | '>' | '>=' | 'about' | 'not about';

/** What stands on one side of a comparison. */
export interface SideNamed {
  /** As written. */ readonly expression: string;
  /** Name in the catalogue; null where it is made of several, or fixed. */ readonly quantity: string | null;
  /** Index of the one ask it is; null where it is made of several, or fixed. */ readonly ask: number | null;
  /** Nothing is asked of it. */ readonly fixed: boolean;
}

/** One comparison that was looked at, with both its sides. */
export interface ComparedSides {
  readonly names: { readonly left: SideNamed; readonly right: SideNamed };
  /** As written. */ readonly text: string;
  readonly left: number | null;
  readonly right: number | null;
  readonly operator: ComparisonOperator;
  /** For `about`: how far apart the sides may be [SI]. */ readonly tolerance: number | null;
  readonly dimension: Exponents;
  /** Sign: positive where it holds; size: the difference over the sizes of what is compared [–]. */
  readonly margin: number | null;
}

/** The place in a range that decides: a counterexample, an example, or where the highest value lies. */
export interface Witness {
  /** Index in {@link CompiledTest.ranges}. */ readonly range: number;
  readonly variable: string;
  readonly place: RangePlace;
  readonly is: 'counterexample' | 'example' | 'closest call' | 'place of the value';
  /** The points around it, without a gap, at which the same is so; absent where it stands alone by its nature. */
  readonly around?: { readonly from: RangePlace; readonly to: RangePlace };
}

export interface Decision {
  /** Null where a value that it hangs on is absent. */ readonly holds: boolean | null;
  /** Sign decides: above 0 it holds, below 0 it does not; continuous where the numbers are. Null where `holds` is. */
  readonly margin: number | null;
  readonly absent: Absent | null;
  /** In the order of the text; inside a range those at the place that decides. */
  readonly sides: readonly ComparedSides[];
  /** Outermost range first; empty where there is none. */ readonly witnesses: readonly Witness[];
}

export interface CompiledTest {
  readonly text: string;
  /** No two alike. */ readonly asks: readonly Ask[];
  /** The numbers that stand in the test outside its ranges: sides that are made of several, and each number asked for. */
  readonly numbers: readonly NamedNumber[];
  readonly ranges: readonly TestedRange[];
  /** All that can be told of these values. */ readonly decide: (values: AskedValues) => Decision;
  /** The same sides alone. */ readonly sides: (values: AskedValues) => readonly ComparedSides[];
  /** The same margin alone: quick, for thousands of draws. */
  readonly margin: (values: AskedValues) => number | null;
  /** The same verdict alone: quick. */ readonly holds: (values: AskedValues) => boolean | null;
}
