/** What was drawn, with its surfaces to be followed anywhere else. */

import { modelError } from './distribution.ts';
import { placeOf } from './drawPlaces.ts';
import type { Drawn, DrawnNumbers } from './model.ts';
import { alone, overPlaces } from './overPlaces.ts';
import { type Surfaces, surfacesOver } from './surfaces.ts';
import type { UnknownInput } from './unknowns.ts';

/**
 * @param inputs those that were drawn, in the order of `unknowns`
 * @param surfaces over the same points, where they are there already
 */
export function followed(
  numbers: DrawnNumbers,
  inputs: readonly UnknownInput[],
  surfaces: Surfaces = surfacesOver(numbers.surface.places, numbers.surface.heldOut),
): Drawn {
  const { unknowns } = numbers;
  const { fits } = numbers.surface;
  const over: Drawn['over'] = (some) => overPlaces(surfaces, fits, unknowns.length, some);
  return {
    ...numbers,
    placeOf: (unit) => ({
      inputs: placeOf(inputs, unit),
      deviations: Float64Array.from({ length: unknowns.length }, (_, i) =>
        i < inputs.length ? 0 : modelError(unit[i]!),
      ),
    }),
    hangsOn(which) {
      const models = new Set(which.flatMap((ask) => fits[ask]!.scatter.map(({ unknown }) => unknown)));
      return (unknown) => unknown < inputs.length || models.has(unknown);
    },
    at(place, which) {
      const numberOf = over(alone(place));
      return which.map((ask) => {
        const [value] = numberOf(ask);
        return value === undefined || Number.isNaN(value) ? null : value;
      });
    },
    over,
  };
}

/** What goes to another thread. */
export function plainNumbers({
  count,
  blocks,
  seed,
  unknowns,
  asks,
  alternatives,
  method,
  solved,
  provisional,
  surface,
}: DrawnNumbers): DrawnNumbers {
  return { count, blocks, seed, unknowns, asks, alternatives, method, solved, provisional, surface };
}
