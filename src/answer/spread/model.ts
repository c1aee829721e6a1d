/** What is not known, drawn: the value of every ask in each of many draws. SI units. */

import type { Study } from '../../study/model.ts';
import type { Crew } from '../asked/crew.ts';
import type { Ask, Told } from '../asked/model.ts';
import type { AskedValues } from '../expression/model.ts';

/** One thing that is not known; all numbers that hang on it take the same draw. */
export interface SpreadSource {
  /** Path of an input in the study, or the name of a model’s error. */ readonly name: string;
  readonly kind: 'input' | 'model';
  /** For people, e.g. `mixture ratio of Alder B`, `friction on the wall`. */ readonly label: string;
}

/** One of several published models that stand beside each other: chosen, not drawn. */
export interface AlternativeChoice {
  readonly of: string;
  readonly by: string;
}

export interface DrawnAsks {
  readonly sources: readonly SpreadSource[];
  /** Of every ask, all that is not known at its middle value. */ readonly middle: readonly Told[];
  /** Number of draws. */ readonly count: number;
  /** Value of every ask in one draw; by the model that the program takes, or by one that stands beside it. */
  values(draw: number, alternative?: AlternativeChoice): AskedValues;
  /** The same with each source at this quantile of its spread, 0 to 1, in the order of `sources`. */
  valuesAt(quantiles: ArrayLike<number>, alternative?: AlternativeChoice): AskedValues;
  /** All that the told numbers name. */ readonly alternatives: readonly AlternativeChoice[];
  /** Of every ask: standard deviation of what stands in for it, found on draws held out [SI]; 0 where nothing does. */
  readonly standInError: readonly number[];
  /** How it was drawn, one line each, e.g. `1024 draws of 3 inputs and 4 model errors`. */
  readonly conditions: readonly string[];
  /** More draws are coming. */ readonly provisional: boolean;
}

export interface DrawOptions {
  readonly draws?: number;
  readonly signal?: AbortSignal;
}

/** First few draws soon, then all. */
export type DrawAsks = (
  study: Study,
  asks: readonly Ask[],
  crew: Crew,
  options?: DrawOptions,
) => AsyncGenerator<DrawnAsks>;
