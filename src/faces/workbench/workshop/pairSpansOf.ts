/** Numbers of two engines and their difference at many places at once, each with its own span. */

import type { Crew } from '../../../answer/asked/crew.ts';
import type { AskedAmbient } from '../../../answer/asked/model.ts';
import { plainAsk } from '../../../answer/asked/plainAsk.ts';
import { choicesOf } from '../../../answer/sentences/alternatives.ts';
import { bandOf } from '../../../answer/sentences/bandOf.ts';
import { drawnAsks, type Row } from '../../../answer/sentences/drawnAsks.ts';
import { drawAsks } from '../../../answer/spread/index.ts';
import type { Study } from '../../../study/model.ts';
import type { PairSpans, Span, SpanPlace } from './deskMessages.ts';

/** In the order asked. @param engines one or two; a difference is the second less the first */
export async function pairSpansOf(
  study: Study,
  crew: Crew,
  engines: readonly string[],
  places: readonly SpanPlace[],
  signal: AbortSignal,
): Promise<readonly PairSpans[]> {
  const asks = places.flatMap((place) =>
    engines.map((engine) => plainAsk(engine, place.quantity, ambientOf(place.altitude))),
  );
  const drawn = drawnAsks(await drawAsks(study, asks, crew, { signal }), study);
  const span = (where: readonly number[], number: (row: Row) => number | null): Span | null => {
    const middle = number(drawn.middle.map((told) => (told.ok ? told.value : null)));
    const band = bandOf(drawn, choicesOf({ places: where }, drawn), { places: where }, number);
    if (middle === null || band === null) return null;
    return { low: Math.min(band.low, middle), high: Math.max(band.high, middle) };
  };
  return places.map((place, i) => {
    const first = i * engines.length;
    const at = (which: number) => (row: Row) => row[first + which] ?? null;
    const own = engines.map((_, which) => span([first + which], at(which)));
    const difference = (row: Row): number | null => {
      const [base, other] = [at(0)(row), at(1)(row)];
      return base === null || other === null ? null : other - base;
    };
    return { ...place, own, difference: engines.length < 2 ? null : span([first, first + 1], difference) };
  });
}

function ambientOf(altitude: SpanPlace['altitude']): AskedAmbient | null {
  if (altitude === null) return null;
  return altitude === 'vacuum' ? { kind: 'vacuum' } : { kind: 'altitude', altitude };
}
