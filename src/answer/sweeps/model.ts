/** A quantity followed while one input moves, or two: what is asked, and what is found. SI units. */

import type { Problem } from '../../numerics/problem.ts';
import type { Exponents } from '../expression/model.ts';

export type Spacing = 'even' | 'in equal ratios';

/** What moves, and how far. */
export interface SweptRange {
  /**
   * `altitude`, `ambientPressure` or `throttle`; an input below the engine, e.g. `nozzle.areaRatio`; or the path where the
   * study states it, e.g. `engines.bell.chamber.pressure`.
   */
  readonly over: string;
  readonly from: number;
  readonly to: number;
  readonly spacing: Spacing;
}

export interface SweepRequest {
  readonly id: string | null;
  /** Null: the finding is said instead. */ readonly title: string | null;
  /** Expressions over catalogue quantities, one a curve. What they leave open is taken where the sweep is. */
  readonly of: readonly string[];
  readonly range: SweptRange;
  /**
   * The input moves on these engines alone. Null: where the study states it for the engines that the curves are of, so that
   * engines which inherit it, or take their size from one of them, move along.
   */
  readonly engines: readonly string[] | null;
  /** At most so many, besides those that place optima and crossings. */ readonly points: number;
}

export interface MapRequest {
  readonly id: string | null;
  readonly title: string | null;
  readonly of: string;
  readonly across: SweptRange;
  readonly up: SweptRange;
  readonly engines: readonly string[] | null;
  /** Along each side. */ readonly points: number;
}

/** What moves, as told. */
export interface ToldRange extends SweptRange {
  readonly label: string;
  /** Name in the catalogue: its unit and digits. */ readonly quantity: string;
  /** Present values in the study, by engine; null where there is none. */
  readonly now: readonly { readonly engine: string; readonly value: number | null }[];
}

/** What is followed, as told. */
export interface ToldOf {
  /** As written. */ readonly expression: string;
  readonly label: string;
  /** `specific impulse of Alder B in vacuum`; the expression where it is made of several. */ readonly words: string;
  /** What tells it from others of its kind; null where it is made of several. */
  readonly parts: { readonly owner: string; readonly place: string } | null;
  readonly dimension: Exponents;
  /** Name in the catalogue: the unit, the digits; null where there is none of that dimension. */
  readonly quantity: string | null;
  /** Engines in it, in the order of the study. */ readonly engines: readonly string[];
}

export interface CurvePoint {
  readonly x: number;
  /** Null in a hole. */ readonly y: number | null;
  /** Between them lies 95 % of the published scatter of the models, and every published alternative; null: none known. */
  readonly low: number | null;
  readonly high: number | null;
}

/** A stretch without a value, and why. */
export interface Hole {
  readonly from: number;
  readonly to: number;
  readonly problem: Problem;
}

export interface Extreme {
  readonly x: number;
  readonly y: number;
  /** `inside`: between smaller (larger) neighbours, placed by further solves; else at the end of a range or beside a hole. */
  readonly at: 'inside' | 'end' | 'hole';
}

export type Course =
  | 'rises'
  | 'falls'
  | 'stays the same'
  | 'has its highest inside'
  | 'has its lowest inside'
  | 'turns more than once'
  | 'has no value';

export interface SweepCurve extends ToldOf {
  readonly points: readonly CurvePoint[];
  readonly holes: readonly Hole[];
  readonly highest: Extreme | null;
  readonly lowest: Extreme | null;
  readonly course: Course;
  /** What the band is made of; empty where there is none. */ readonly bandOf: readonly string[];
}

/** Two curves have the same value. */
export interface Crossing {
  readonly x: number;
  readonly y: number;
  /** Indices of the curves; the first is the higher one before. */ readonly curves: readonly [
    number,
    number,
  ];
  /** They change places at a jump of one of them: there is no common value. */ readonly jump: boolean;
}

/** What stays as it is while the input moves, in words. */
export interface Held {
  /** The one to know before reading the figure, e.g. `Thrust held at 800 kN in vacuum: the throat is sized anew at each point.` */
  readonly short: string;
  /** All of it, one line an engine. */ readonly lines: readonly string[];
}

/** Where the numbers come from, for the foot of a figure. */
export interface Origin {
  readonly models: readonly string[];
  readonly sources: readonly string[];
}

export interface Sweep {
  readonly request: SweepRequest;
  readonly range: ToldRange;
  readonly curves: readonly SweepCurve[];
  readonly crossings: readonly Crossing[];
  readonly held: Held;
  readonly origin: Origin;
  /** Still being worked out. */ readonly provisional: boolean;
}

export interface Level {
  readonly value: number;
  /** Lines of equal value in the values of both inputs. */
  readonly lines: readonly (readonly { readonly x: number; readonly y: number }[])[];
}

/** A part of the map without values, for one reason. */
export interface MapHole {
  /** Indices in {@link SweepMap.values}: `row * across.length + column`. */ readonly places: readonly number[];
  readonly problem: Problem;
}

export interface SweepMap extends ToldOf {
  readonly request: MapRequest;
  readonly rangeAcross: ToldRange;
  readonly rangeUp: ToldRange;
  /** Values of the inputs at the grid’s columns and rows. */
  readonly across: readonly number[];
  readonly up: readonly number[];
  /** Row by row from the lowest `up`; null in a hole. */ readonly values: readonly (number | null)[];
  readonly holes: readonly MapHole[];
  readonly levels: readonly Level[];
  readonly highest: MapExtreme | null;
  readonly lowest: MapExtreme | null;
  readonly held: Held;
  readonly origin: Origin;
  readonly provisional: boolean;
}

export interface MapExtreme {
  readonly x: number;
  readonly y: number;
  readonly value: number;
  readonly at: Extreme['at'];
}

export interface SweepOptions<Found> {
  /** Ends the work at once; the promise is then rejected with the signal’s reason. */ readonly signal?: AbortSignal;
  /** Points done, of at most so many. */ readonly onProgress?: (done: number, most: number) => void;
  /** What is known so far, coarse at first, each time that it has become finer. */
  readonly onUpdate?: (found: Found) => void;
}
