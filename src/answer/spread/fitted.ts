/** One ask with its surfaces: its number, and what the errors of the models move it by. */

import { movedBy } from './distribution.ts';
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

/** What the errors of the models move a number by. */
export function movedIn(
  { scatter }: Fitted,
  deviations: ArrayLike<number>,
  surfaces: SurfacesAt,
  place: number,
): number {
  let sum = 0;
  for (const { unknown, low, high } of scatter) {
    const deviation = deviations[unknown]!;
    const end = surfaces.at(deviation < 0 ? low : high, place);
    sum += movedBy(deviation, 0, end, end);
  }
  return sum;
}
