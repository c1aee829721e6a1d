/** What an input would have to be for a comparison to hold: what is asked, and what is found. SI units. */

import type { Held, Sweep, SweptRange, ToldRange } from '../sweeps/model.ts';

export interface NeedRequest {
  readonly id: string | null;
  readonly title: string | null;
  /** A comparison of two expressions, e.g. `bell.specificImpulse(vacuum) >= plug.specificImpulse(vacuum)`. */
  readonly so: string;
  /** The unknown, as in a sweep, and where it is looked for. */ readonly range: SweptRange;
  /** Engines on which alone it moves; null: where the study states it. */
  readonly engines: readonly string[] | null;
}

/** A value of the unknown at which the comparison begins or ceases to hold. */
export interface NeededValue {
  readonly x: number;
  /** The comparison holds above it, not below. */ readonly holdsAbove: boolean;
  /** What is not known, the input itself being given, moves it. */ readonly isOpen: boolean;
  /** 95 % of that; null where nothing is open, or where the range has no such end. */
  readonly low: number | null;
  readonly high: number | null;
  /** Both sides there [SI]; a jump has no common value. */ readonly value: number | null;
}

/** A stretch of the range, and whether the comparison holds there. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
  /** Null: a side has no value there. */ readonly holds: boolean | null;
}

export interface Need {
  readonly request: NeedRequest;
  readonly range: ToldRange;
  readonly found: readonly NeededValue[];
  readonly stretches: readonly Stretch[];
  /** Where no value does: the place that comes nearest, and what is missing there [SI of the sides]. */
  readonly nearest: { readonly x: number; readonly missing: number } | null;
  /** Both sides over the range. */ readonly sweep: Sweep;
  readonly held: Held;
}
