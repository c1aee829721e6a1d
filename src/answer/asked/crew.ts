/** Who works out what is asked at many points: one thread here, all cores of the machine in the faces. */

import type { Ask, Told } from './model.ts';

/** Inputs of the study set to other values [SI], by the path where the study states them, e.g. `engines.bell.chamber.pressure`. */
export type Point = Readonly<Record<string, number>>;

export interface CrewOptions {
  /** Ends the work at once; the promise is then rejected with the signal's reason. */ readonly signal?: AbortSignal;
  /** Told as points come in, in any order. */
  readonly onPoint?: (index: number, told: readonly Told[]) => void;
}

export interface Crew {
  /** How many points are worked on at once. */ readonly size: number;
  /** What is told of each ask at each point: `result[point][ask]`. An engine that fails there is a problem, not a rejection. */
  tell(
    asks: readonly Ask[],
    points: readonly Point[],
    options?: CrewOptions,
  ): Promise<readonly (readonly Told[])[]>;
}

/** The same crew with some inputs set at every point, where a point does not set them itself. */
export function pointsAt(crew: Crew, set: Point): Crew {
  return {
    size: crew.size,
    tell: (asks, points, options) =>
      crew.tell(
        asks,
        points.map((point) => ({ ...set, ...point })),
        options,
      ),
  };
}
