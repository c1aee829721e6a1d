/** Hands in any number made one crew: shares the work out, keeps its order, stops when told. */

import type { Crew, Point } from './crew.ts';
import type { Ask, Told } from './model.ts';

/** One thread of work; asked for one thing at a time. */
export interface Hand {
  work(asks: readonly Ask[], point: Point): Promise<readonly Told[]>;
}

/** Asks that are worked out together, with their places in the list. */
interface Group {
  readonly places: readonly number[];
  /** The same array for every point, so that a hand far away needs it once only. */ readonly asks: readonly Ask[];
}

/** A piece of the work: a group of asks at one point. */
interface Piece {
  readonly point: number;
  readonly group: Group;
}

/** @throws RangeError where there is no hand */
export function crewOf(hands: readonly Hand[]): Crew {
  if (hands.length === 0) throw new RangeError('a crew needs a hand');
  const idle = [...hands];
  const waiting: ((hand: Hand) => void)[] = [];

  function take(): Promise<Hand> {
    const hand = idle.pop();
    return hand === undefined ? new Promise((resolve) => waiting.push(resolve)) : Promise.resolve(hand);
  }
  function giveBack(hand: Hand): void {
    const next = waiting.shift();
    if (next === undefined) idle.push(hand);
    else next(hand);
  }

  return {
    size: hands.length,
    async tell(asks, points, { signal, onPoint } = {}) {
      signal?.throwIfAborted();
      const pieces = piecesOf(asks, points.length, hands.length);
      const told = points.map(() => new Array<Told>(asks.length));
      const left = points.map((_, point) => pieces.filter((piece) => piece.point === point).length);
      const stopped = new AbortController();
      const stop = (): void => stopped.abort(signal?.reason);
      signal?.addEventListener('abort', stop, { once: true });
      let next = 0;

      async function workThrough(): Promise<void> {
        while (next < pieces.length) {
          const hand = await take();
          try {
            stopped.signal.throwIfAborted();
            const piece = pieces[next++];
            if (piece === undefined) return;
            const answers = await hand.work(piece.group.asks, points[piece.point]!);
            stopped.signal.throwIfAborted();
            piece.group.places.forEach((place, i) => {
              told[piece.point]![place] = answers[i]!;
            });
            if (--left[piece.point]! === 0) onPoint?.(piece.point, told[piece.point]!);
          } finally {
            giveBack(hand);
          }
        }
      }

      try {
        await Promise.race([Promise.all(hands.map(workThrough)), whenAborted(stopped.signal)]);
      } catch (error) {
        stopped.abort(error);
        throw error;
      } finally {
        signal?.removeEventListener('abort', stop);
      }
      return told;
    },
  };
}

/** Never comes to an end but by rejection, at once when the signal is given. */
function whenAborted(signal: AbortSignal): Promise<never> {
  return new Promise((_, reject) => {
    signal.addEventListener('abort', () => reject(signal.reason as Error), { once: true });
  });
}

/** Points so few that some hand would stand idle are cut up further, by the state of the engines that is asked for. */
const ENOUGH_POINTS = 4;

/** So are the last ones, so that the hands end together, and the first one, which is often waited for. */
function piecesOf(asks: readonly Ask[], points: number, hands: number): readonly Piece[] {
  const whole = [{ places: asks.map((_, place) => place), asks }];
  const cutFrom = hands === 1 ? points : points < ENOUGH_POINTS * hands ? 0 : points - hands;
  const cut = hands === 1 ? whole : byState(asks);
  return Array.from({ length: points }, (_, point) =>
    (point > 0 && point < cutFrom ? whole : cut).map((group) => ({ point, group })),
  ).flat();
}

/** Asks of the same engine in the same state belong together: it is solved once for all of them. */
function byState(asks: readonly Ask[]): readonly Group[] {
  const placesOf = new Map<string, number[]>();
  asks.forEach(({ engine, throttle, inputs }, place) => {
    const key = JSON.stringify([engine, throttle, inputs]);
    const places = placesOf.get(key);
    if (places === undefined) placesOf.set(key, [place]);
    else places.push(place);
  });
  const groups = [...placesOf.values()].map((places) => ({
    places,
    asks: places.map((place) => asks[place]!),
  }));
  return groups.length === 0 ? [{ places: [], asks }] : groups;
}
