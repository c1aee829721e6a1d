/** Differences of two engines at many places at once, each with its own span. */

import type { Crew } from '../../../answer/asked/crew.ts';
import { type ComparedPair, differenceBands } from '../../../answer/sentences/index.ts';
import type { Study } from '../../../study/model.ts';
import type { DifferencePlace, DifferenceSpan } from './deskMessages.ts';

/** In the order asked; null where an engine has no number. */
export async function differencesOf(
  study: Study,
  crew: Crew,
  pair: ComparedPair,
  places: readonly DifferencePlace[],
  signal: AbortSignal,
): Promise<readonly (DifferenceSpan | null)[]> {
  const bands = await differenceBands(
    study,
    crew,
    pair,
    places.map(({ quantity, altitude }) => ({
      quantity,
      ambient:
        altitude === null
          ? null
          : altitude === 'vacuum'
            ? { kind: 'vacuum' as const }
            : { kind: 'altitude' as const, altitude },
    })),
    { signal },
  );
  return places.map((place, i) => {
    const band = bands[i];
    return band === null || band === undefined ? null : { ...place, low: band.low, high: band.high };
  });
}
