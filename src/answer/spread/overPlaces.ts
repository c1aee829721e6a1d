/** One ask at many places at once, on its surfaces. */

import { remembered } from '../../numerics/remembered.ts';
import { type Pulls, pullInto, pullsOf } from './distribution.ts';
import { endsOver, type Fitted } from './fitted.ts';
import type { DrawnPlace, DrawnPlaces } from './model.ts';
import type { Surfaces } from './surfaces.ts';

/**
 * The values of an ask, by its place in `fits`, at each of the places; NaN throughout for one that had no value at some of the
 * points solved: a surface says nothing of where a number ends.
 */
export function overPlaces(
  surfaces: Surfaces,
  fits: readonly Fitted[],
  unknowns: number,
  places: DrawnPlaces,
): (ask: number) => Float64Array {
  const { whichInputs, like } = places;
  const there = surfaces.over(places.inputs);
  const best = new Float64Array(places.inputs.length);
  const ends = endsOver(there, places.inputs.length);
  const partsOf = remembered((...moves: readonly number[]) => partedBy(places, moves, unknowns));
  return (ask) => {
    const { value, scatter, toldAt } = fits[ask]!;
    const found = new Float64Array(whichInputs.length);
    if (value === null || toldAt !== null) return found.fill(Number.NaN);
    const { moving, moved, still, pulls } = partsOf(...scatter.map(({ unknown }) => unknown));
    there.fill(best, value);
    for (let i = 0; i < moved.length; i++) moved[i] = best[whichInputs[moving[i]!]!]!;
    scatter.forEach((error, i) => {
      pullInto(moved, pulls[i]!, ends(error));
    });
    for (let i = 0; i < moving.length; i++) found[moving[i]!] = moved[i]!;
    for (let i = 0; i < still.length; i++) found[still[i]!] = found[like[still[i]!]!]!;
    return found;
  };
}

interface Parts {
  /** Places at which the number has to be worked out. */ readonly moving: Int32Array;
  /** Those at which it is what it was at the earlier place that they are like. */ readonly still: Int32Array;
  /** Room for the numbers at the moving places. */ readonly moved: Float64Array;
  /** At the moving places, by each of the errors. */ readonly pulls: readonly Pulls[];
}

/** @param moves the errors of the models that move a number; what another one does leaves it as it was */
function partedBy(
  { inputs, whichInputs, deviations, like, butFor }: DrawnPlaces,
  moves: readonly number[],
  unknowns: number,
): Parts {
  const isStill = (row: number): boolean => like[row]! >= 0 && !moves.includes(butFor[row]!);
  const rows = Int32Array.from(like.keys());
  const moving = rows.filter((row) => !isStill(row));
  const pullOf = (unknown: number): Pulls =>
    pullsOf(
      Float64Array.from(moving, (row) => deviations[row * unknowns + unknown]!),
      (place) => whichInputs[moving[place]!]!,
      inputs.length,
    );
  return {
    moving,
    moved: new Float64Array(moving.length),
    still: rows.filter(isStill),
    pulls: moves.map(pullOf),
  };
}

/** One place as a list. */
export function alone({ inputs, deviations }: DrawnPlace): DrawnPlaces {
  const [whichInputs, like, butFor] = [Int32Array.of(0), Int32Array.of(-1), Int32Array.of(-1)];
  return { inputs: [inputs], whichInputs, deviations, like, butFor };
}
