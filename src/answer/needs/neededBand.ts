/**
 * Between which values the unknown lies that is needed, over all else that is not known.
 *
 * In each draw the difference d of both sides is known at the place found; the place that this draw needs lies where d vanishes,
 * by the slope of d there:
 *
 *   x_i = x − d_i / (∂d/∂x)
 */

import type { Study } from '../../study/model.ts';
import { type Crew, pointsAt } from '../asked/crew.ts';
import { choicesOf } from '../sentences/alternatives.ts';
import { type Band, bandOf } from '../sentences/bandOf.ts';
import { drawnAsks, type Row } from '../sentences/drawnAsks.ts';
import { drawAsks } from '../spread/index.ts';
import type { Followed } from '../sweeps/followed.ts';
import type { Mover } from '../sweeps/mover.ts';
import { movedAsks } from '../sweeps/sampler.ts';

/** Share of the range over which the slope is taken. */
const STEP = 0.01;
/** So many draws place the ends of a band; they are told with few digits. */
const DRAWS = 256;

/** Null where nothing is open, or the sides do not part. */
export async function neededBand(
  study: Study,
  crew: Crew,
  followed: Followed,
  mover: Mover,
  x: number,
  signal: AbortSignal | undefined,
): Promise<Band | null> {
  const { from, to } = mover.told;
  const step = STEP * (to - from);
  const [below, above] = [Math.max(from, x - step), Math.min(to, x + step)];
  const at = (place: number) => ({
    asks: movedAsks(followed.asks, (ask) => mover.ask(ask, place)),
    point: mover.point(place),
  });
  const difference = (row: Row): number | null => {
    const [left, right] = followed.expressions.map((expression, i) =>
      expression.evaluate(followed.places[i]!.map((place) => row[place] ?? null)),
    );
    return left === null || left === undefined || right === null || right === undefined ? null : left - right;
  };
  const work = signal === undefined ? {} : { signal };
  const ends = await Promise.all(
    [below, above].map(async (place) => {
      const { asks, point } = at(place);
      const [told = []] = await crew.tell(asks, [point], work);
      return difference(told.map((one) => (one.ok ? one.value : null)));
    }),
  );
  const [low, high] = ends;
  if (low === null || high === null || low === undefined || high === undefined || above <= below) return null;
  const slope = (high - low) / (above - below);
  if (slope === 0) return null;
  const { asks, point } = at(x);
  const drawn = drawnAsks(
    await drawAsks(study, asks, pointsAt(crew, point), { count: DRAWS, ...work, given: Object.keys(point) }),
    study,
  );
  const places = asks.map((_, place) => place);
  const band = bandOf(drawn, choicesOf({ places }, drawn), (row) => {
    const d = difference(row);
    return d === null ? null : x - d / slope;
  });
  return band === null || band.high - band.low < 1e-9 * Math.abs(x) ? null : band;
}
