/** Numbers drawn over all that is not known: inputs as stated, and the published errors of the models. */

import type { Told } from '../asked/model.ts';

/** One thing that is not known; the draws of all that hang on it move together. */
export type Unknown =
  | {
      readonly kind: 'input';
      /** Path in the study: what two engines inherit has one. */ readonly path: string;
      /** [SI] taken where one value is needed */ readonly middle: number;
      /** [SI] between these it is drawn */ readonly low: number;
      readonly high: number;
      /** As stated, e.g. `3.5 ± 0.05`. */ readonly text: string;
    }
  /** The error of a model, by the name of its {@link Scatter}. */
  | { readonly kind: 'model'; readonly name: string; readonly source: string };

/** What is known of one ask over all draws. */
export interface DrawnAsk {
  /** [SI] one a draw; 0 where `absent` */ readonly values: Float64Array;
  /** 1 where there is no value in that draw; null: there always is. */ readonly absent: Uint8Array | null;
  /** Standard error of the response surface on points it had not seen [SI]; 0 where the engines were solved for each draw. */
  readonly surfaceError: number;
  /**
   * Its miss at each of these points [SI], their squares adding up to that of `surfaceError`: what the surfaces of several asks
   * miss together at a point, they miss together anywhere. Empty where there was none.
   */
  readonly surfaceMisses: Float64Array;
  /** At the study's middle values. */ readonly middle: Told;
}

/** The same draws with one of several published models in charge. */
export interface DrawnAlternative {
  /** e.g. `separation criterion` */ readonly of: string;
  /** e.g. `Schmucker 1973` */ readonly by: string;
  /** One an ask; those that the model does not touch are the same objects as in `asks`. */
  readonly asks: readonly DrawnAsk[];
}

/** One way in which all that is not known may be. */
export interface DrawnPlace {
  /** From −1 to 1 over what is drawn. */ readonly inputs: Float64Array;
  /** Of the models' errors, at the place of their unknown. */ readonly deviations: Float64Array;
}

/** Many such places, without an object for each. */
export interface DrawnPlaces {
  /** Those that are told apart. */ readonly inputs: readonly Float64Array[];
  /** Of each place, which of `inputs` it has. */ readonly whichInputs: Int32Array;
  /** By place, then by unknown. */ readonly deviations: Float64Array;
  /** The earlier place that each is like but for one unknown, an error of a model; −1: none. */ readonly like: Int32Array;
  /** That unknown. */ readonly butFor: Int32Array;
}

export interface Drawn {
  readonly count: number;
  /** Draws come in blocks of equal length, each scrambled by itself: their differences give the error of a share. */
  readonly blocks: number;
  readonly seed: number;
  readonly unknowns: readonly Unknown[];
  /** In the order asked. */ readonly asks: readonly DrawnAsk[];
  readonly alternatives: readonly DrawnAlternative[];
  /** `exact`: no input moves, or the engines were solved for each draw; `surface`: a response surface stands for them. */
  readonly method: 'exact' | 'surface';
  /** Points at which the engines were solved. */ readonly solved: number;
  /** Fewer points than are wanted: the inputs do not move yet, or the surface is coarse. */ readonly provisional: boolean;
  /** A point of the unit cube, an entry for each unknown, as a place on the surfaces. */
  placeOf(this: void, unit: ArrayLike<number>): DrawnPlace;
  /** The values of some asks, by their places in the list, at such a place, on the surfaces; null: as NaN below. */
  at(place: DrawnPlace, which: readonly number[]): (number | null)[];
  /**
   * The values of an ask, by its place in the list, at several places, on the surfaces; NaN for an ask that had no value at
   * some of the points solved, for they do not say where it ends.
   */
  over(this: void, places: DrawnPlaces): (ask: number) => Float64Array;
  /** Whether any of these asks can move with an unknown, by its place in `unknowns`. */
  hangsOn(this: void, which: readonly number[]): (unknown: number) => boolean;
}
