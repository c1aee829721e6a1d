/** One ask at many places at once, on its surfaces. */

import { movedBy } from './distribution.ts';
import type { Fitted } from './fitted.ts';
import type { DrawnPlace } from './model.ts';
import type { FittedSurface, Surfaces, SurfacesAt } from './surfaces.ts';

/**
 * The values of an ask, by its place in `fits`, at each of the places; NaN throughout for one that had no value at some of the
 * points solved: a surface says nothing of where a number ends.
 */
export function overPlaces(
  surfaces: Surfaces,
  fits: readonly Fitted[],
  unknowns: number,
  places: readonly DrawnPlace[],
): (ask: number) => Float64Array {
  const flat = flattened(places, unknowns);
  const there = surfaces.over(flat.inputs);
  const along = (surface: FittedSurface): Float64Array => valuesAlong(there, surface, flat.inputs.length);
  return (ask) => {
    const { value, scatter, toldAt } = fits[ask]!;
    const found = new Float64Array(places.length);
    if (value === null || toldAt !== null) return found.fill(Number.NaN);
    const best = along(value);
    for (let row = 0; row < found.length; row++) found[row] = best[flat.whichInputs[row]!]!;
    const moves = new Uint8Array(unknowns + 1);
    for (const { unknown } of scatter) moves[unknown + 1] = 1;
    for (const { unknown, low, high } of scatter)
      moveInto(found, flat, moves, unknown, along(low), along(high));
    return found;
  };
}

/** Adds what one error of a model moves the number by. @param moves 1 for each unknown, counted from 1, that does at all */
function moveInto(
  found: Float64Array,
  { whichInputs, deviations, unknowns, as, butFor }: Flattened,
  moves: Uint8Array,
  unknown: number,
  low: Float64Array,
  high: Float64Array,
): void {
  for (let row = 0; row < found.length; row++) {
    // What does not move the number leaves it as it was.
    if (as[row]! >= 0 && moves[butFor[row]! + 1] === 0) found[row] = found[as[row]!]!;
    else {
      const input = whichInputs[row]!;
      found[row]! += movedBy(deviations[row * unknowns + unknown]!, 0, low[input]!, high[input]!);
    }
  }
}

function valuesAlong(there: SurfacesAt, surface: FittedSurface, count: number): Float64Array {
  const values = new Float64Array(count);
  for (let i = 0; i < count; i++) values[i] = there.at(surface, i);
  return values;
}

/** Many places without an object for each. */
interface Flattened {
  /** Those that are told apart: places may have theirs in common, as the same object. */
  readonly inputs: readonly Float64Array[];
  readonly whichInputs: Int32Array;
  readonly unknowns: number;
  /** By place, then by unknown. */ readonly deviations: Float64Array;
  /** As {@link DrawnPlace.butFor}; −1: none. */ readonly as: Int32Array;
  readonly butFor: Int32Array;
}

function flattened(places: readonly DrawnPlace[], unknowns: number): Flattened {
  const known = new Map<Float64Array, number>();
  const whichInputs = Int32Array.from(places, ({ inputs }) => {
    const which = known.get(inputs) ?? known.size;
    known.set(inputs, which);
    return which;
  });
  const deviations = new Float64Array(places.length * unknowns);
  for (const [row, place] of places.entries()) deviations.set(place.deviations, row * unknowns);
  return {
    inputs: [...known.keys()],
    whichInputs,
    unknowns,
    deviations,
    as: Int32Array.from(places, ({ butFor }) => butFor?.as ?? -1),
    butFor: Int32Array.from(places, ({ butFor }) => butFor?.unknown ?? -1),
  };
}
