/** A plain expression told: its value with the span over all that is not known. */

import type { Problem } from '../../numerics/problem.ts';
import type { Exponents } from '../expression/model.ts';

export interface ToldNumber {
  /** As written. */ readonly expression: string;
  /** [SI] at the study’s middle values; null where there is none */ readonly value: number | null;
  /** [SI] 95 % of what it may be lies between them; null where there is no value */
  readonly low: number | null;
  readonly high: number | null;
  /** Name in the catalogue; null where it is made of several. */ readonly quantity: string | null;
  /** Names in the catalogue of all that it is made of. */ readonly madeOf: readonly string[];
  readonly dimension: Exponents;
  /** Of temperatures: the difference of two, for which the zero of a scale does not count. */
  readonly isDifference: boolean;
  /** Why there is no value. */ readonly problem: Problem | null;
}

/** By expression as written. */
export type ToldNumbers = ReadonlyMap<string, ToldNumber>;
