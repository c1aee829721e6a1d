/** Hands in any number made one crew: shares the work out, keeps its order, stops when told. */

import type { Crew, Point } from './crew.ts';
import type { Ask, Told } from './model.ts';

/** One thread of work; asked for one thing at a time. */
export interface Hand {
  /** @param signal what is given up then and has not begun is not worked out: its promise is rejected */
  work(asks: readonly Ask[], point: Point, signal?: AbortSignal): Promise<readonly Told[]>;
  /** How many pieces it takes beside the one at work, so that it need not wait for the next one; none by default. */
  readonly ahead?: number;
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
  const busy = busyHands(hands);

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

      async function workOut({ point, group }: Piece, hand: Hand): Promise<void> {
        try {
          const answers = await hand.work(group.asks, points[point]!, stopped.signal);
          stopped.signal.throwIfAborted();
          group.places.forEach((place, i) => {
            told[point]![place] = answers[i]!;
          });
          if (--left[point]! === 0) onPoint?.(point, told[point]!);
        } catch (error) {
          stopped.abort(error);
          throw error;
        } finally {
          busy.giveBack(hand);
        }
      }

      async function workThrough(): Promise<void> {
        const working: Promise<void>[] = [];
        for (const [i, piece] of pieces.entries()) {
          // The last pieces go to whoever is done first, so that the hands end together.
          const hand = await busy.take(pieces.length - i <= hands.length);
          if (stopped.signal.aborted) {
            busy.giveBack(hand);
            break;
          }
          const work = workOut(piece, hand);
          // Told by the signal, at once.
          work.catch(() => undefined);
          working.push(work);
        }
        await Promise.all(working);
      }

      try {
        await Promise.race([workThrough(), whenAborted(stopped.signal)]);
      } finally {
        signal?.removeEventListener('abort', stop);
      }
      return told;
    },
  };
}

interface BusyHands {
  /** The hand with the least to do, as soon as one takes more. @param idle only one that has nothing to do */
  take(idle: boolean): Promise<Hand>;
  giveBack(hand: Hand): void;
}

function busyHands(hands: readonly Hand[]): BusyHands {
  const workOf = new Map(hands.map((hand) => [hand, 0]));
  /** First come, first served. */
  const waiting: { readonly idle: boolean; serve(hand: Hand): void }[] = [];

  function serveNext(): void {
    const [next] = waiting;
    if (next === undefined) return;
    const hand = hands.reduce((a, b) => (workOf.get(b)! < workOf.get(a)! ? b : a));
    const work = workOf.get(hand)!;
    if (work > (next.idle ? 0 : (hand.ahead ?? 0))) return;
    waiting.shift();
    workOf.set(hand, work + 1);
    next.serve(hand);
  }

  return {
    take: (idle) =>
      new Promise((serve) => {
        waiting.push({ idle, serve });
        serveNext();
      }),
    giveBack(hand) {
      workOf.set(hand, workOf.get(hand)! - 1);
      serveNext();
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
