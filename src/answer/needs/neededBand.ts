/**
 * Between which values the unknown lies that is needed, over all else that is not known.
 *
 * In each draw the difference d of both sides is known at the place x found. Its curve D over the range, all else at the middle
 * values, is moved by as much all along, and followed from x to where it vanishes:
 *
 *   D(x_i) = D(x) − d_i
 */

import type { Study } from '../../study/model.ts';
import { type Crew, pointsAt } from '../asked/crew.ts';
import { choicesOf } from '../sentences/alternatives.ts';
import { bandOf } from '../sentences/bandOf.ts';
import { drawnAsks, type Row } from '../sentences/drawnAsks.ts';
import { drawAsks } from '../spread/index.ts';
import type { Followed } from '../sweeps/followed.ts';
import type { Mover } from '../sweeps/mover.ts';
import { movedAsks } from '../sweeps/sampler.ts';

/** So many draws place the ends of a band; they are told with few digits. */
const DRAWS = 256;

/** The difference of both sides at a place of the sweep; null where one has no value. */
export interface DifferenceAt {
  readonly x: number;
  readonly y: number | null;
}

/** An end is null where the curve does not come to it within the range. */
export interface NeededEnds {
  readonly low: number | null;
  readonly high: number | null;
}

/** Null where nothing is open, or the sides do not part. @param curve of the difference, in the order of x */
export async function neededBand(
  study: Study,
  crew: Crew,
  followed: Followed,
  mover: Mover,
  x: number,
  curve: readonly DifferenceAt[],
  signal: AbortSignal | undefined,
): Promise<NeededEnds | null> {
  const sides = (row: Row): readonly (number | null)[] =>
    followed.expressions.map((expression, i) =>
      expression.evaluate(followed.places[i]!.map((place) => row[place] ?? null)),
    );
  const difference = (row: Row): number | null => {
    const [left, right] = sides(row);
    return left === null || left === undefined || right === null || right === undefined ? null : left - right;
  };
  const point = mover.point(x);
  const asks = movedAsks(followed.asks, (ask) => mover.ask(ask, x));
  const options = { count: DRAWS, given: Object.keys(point), ...(signal && { signal }) };
  const drawn = drawnAsks(await drawAsks(study, asks, pointsAt(crew, point), options), study);
  const middle = drawn.middle.map((told) => (told.ok ? told.value : null));
  const here = difference(middle);
  const places = asks.map((_, place) => place);
  const band = bandOf(drawn, choicesOf({ places }, drawn), { places }, difference);
  if (here === null || band === null) return null;
  const size = sides(middle).reduce<number>((sum, side) => sum + Math.abs(side ?? 0), 0);
  if (band.high - band.low < NOTHING * size) return null;
  const targets = { below: Math.min(here, here - band.high), above: Math.max(here, here - band.low) };
  const start = { x, y: here };
  const [before, after] = [curve.filter((at) => at.x < x).reverse(), curve.filter((at) => at.x > x)];
  const rises = (after[0]?.y ?? null) === null ? (before[0]?.y ?? here) < here : after[0]!.y! > here;
  return {
    low: placeOn(before, start, rises ? targets.below : targets.above),
    high: placeOn(after, start, rises ? targets.above : targets.below),
  };
}

/** A band of this share of the sides is none. */
const NOTHING = 1e-9;

/** Where a curve, followed away from its start, first has a value; null where it has gone back past its start, or has ended. */
function placeOn(
  away: readonly DifferenceAt[],
  start: { readonly x: number; readonly y: number },
  target: number,
): number | null {
  const way = target - start.y;
  if (way === 0) return start.x;
  let from = start;
  for (const { x, y } of away) {
    if (y === null || (y - start.y) * way < 0) return null;
    if (Math.abs(y - start.y) >= Math.abs(way)) {
      return from.x + ((x - from.x) * (target - from.y)) / (y - from.y);
    }
    from = { x, y };
  }
  return null;
}
