/** One ask at many places at once, on its surfaces. */

import { movedBy } from './distribution.ts';
import type { Fitted } from './fitted.ts';
import type { DrawnPlace, DrawnPlaces } from './model.ts';
import type { FittedSurface, Surfaces, SurfacesAt } from './surfaces.ts';

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
  const there = surfaces.over(places.inputs);
  const [best, lowEnd, highEnd] = [0, 1, 2].map(() => new Float64Array(places.inputs.length));
  const moves = new Uint8Array(unknowns);
  return (ask) => {
    const { value, scatter, toldAt } = fits[ask]!;
    const found = new Float64Array(places.whichInputs.length);
    if (value === null || toldAt !== null) return found.fill(Number.NaN);
    fillAlong(best!, there, value);
    for (let row = 0; row < found.length; row++) found[row] = best![places.whichInputs[row]!]!;
    moves.fill(0);
    for (const { unknown } of scatter) moves[unknown] = 1;
    for (const { unknown, low, high } of scatter) {
      fillAlong(lowEnd!, there, low);
      fillAlong(highEnd!, there, high);
      moveInto(found, places, moves, unknown, lowEnd!, highEnd!);
    }
    return found;
  };
}

/** Adds what one error of a model moves the number by. @param moves 1 for each unknown that does at all */
function moveInto(
  found: Float64Array,
  { whichInputs, deviations, like, butFor }: DrawnPlaces,
  moves: Uint8Array,
  unknown: number,
  low: Float64Array,
  high: Float64Array,
): void {
  const unknowns = moves.length;
  for (let row = 0; row < found.length; row++) {
    // What does not move the number leaves it as it was.
    if (like[row]! >= 0 && moves[butFor[row]!] === 0) found[row] = found[like[row]!]!;
    else {
      const input = whichInputs[row]!;
      found[row]! += movedBy(deviations[row * unknowns + unknown]!, 0, low[input]!, high[input]!);
    }
  }
}

function fillAlong(into: Float64Array, there: SurfacesAt, surface: FittedSurface): void {
  for (let i = 0; i < into.length; i++) into[i] = there.at(surface, i);
}

/** One place as a list. */
export function alone({ inputs, deviations }: DrawnPlace): DrawnPlaces {
  const [whichInputs, like, butFor] = [Int32Array.of(0), Int32Array.of(-1), Int32Array.of(-1)];
  return { inputs: [inputs], whichInputs, deviations, like, butFor };
}
