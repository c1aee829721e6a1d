/** One ask with its surfaces: its number, and what the errors of the models move it by. */

import { pullInto, pullsOf } from './distribution.ts';
import type { Unknown } from './model.ts';
import type { AskNumbers } from './numbersAt.ts';
import type { FittedSurface, Surfaces, SurfacesAt, ValuesAtPoints } from './surfaces.ts';

/** One ask, ready to be drawn. */
export interface Fitted {
  readonly value: FittedSurface | null;
  readonly scatter: readonly {
    readonly unknown: number;
    readonly low: FittedSurface;
    readonly high: FittedSurface;
  }[];
  /** Null: told at every point. */ readonly toldAt: readonly boolean[] | null;
}

export function fittedTo(
  surfaces: Surfaces,
  unknowns: readonly Unknown[],
  { value, scatter }: AskNumbers,
): Fitted {
  return {
    ...valueFittedTo(surfaces, value),
    scatter: [...scatter].flatMap(([name, { low, high }]) => {
      const unknown = unknowns.findIndex((each) => each.kind === 'model' && each.name === name);
      const [lowFit, highFit] = [surfaces.fit(low), surfaces.fit(high)];
      return lowFit === null || highFit === null ? [] : [{ unknown, low: lowFit, high: highFit }];
    }),
  };
}

export function valueFittedTo(surfaces: Surfaces, values: ValuesAtPoints): Pick<Fitted, 'value' | 'toldAt'> {
  return {
    value: surfaces.fit(values),
    toldAt: values.includes(null) ? values.map((one) => one !== null) : null,
  };
}

/** What the errors of the models move a number by, in all draws. @param deviations of each unknown */
export function moverOver(
  deviations: readonly Float64Array[],
  there: SurfacesAt,
  count: number,
): (fitted: Fitted, into: Float64Array) => void {
  const ends = endsOver(there, count);
  const pulls = deviations.map((own) => pullsOf(own, (draw) => draw, count));
  return ({ scatter }, into) => {
    into.fill(0);
    for (const error of scatter) pullInto(into, pulls[error.unknown]!, ends(error));
  };
}

/** The ends of a model's band at all places, the low ones first; filled again each time. */
export function endsOver(
  there: SurfacesAt,
  count: number,
): (error: Pick<Fitted['scatter'][number], 'low' | 'high'>) => Float64Array {
  const both = new Float64Array(2 * count);
  const [lowEnds, highEnds] = [both.subarray(0, count), both.subarray(count)];
  return ({ low, high }) => {
    there.fill(lowEnds, low);
    there.fill(highEnds, high);
    return both;
  };
}
