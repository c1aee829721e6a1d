/**
 * Hands made one crew that does the same work in the same order every time: the same questions give the same bits, for the last
 * digits of what an engine gives hang on what it was asked before.
 */

import type { Crew, CrewOptions, Point } from './crew.ts';
import type { Hand } from './crewOf.ts';
import type { Ask, Told } from './model.ts';

/**
 * What is solved at a point goes to the hand that had it before, what is new to the next in turn: nothing is solved twice, and no
 * hand takes the other's work. Answers are given out in the order of the questions.
 *
 * @throws RangeError where there is no hand
 */
export function steadyCrewOf(hands: readonly Hand[]): Crew {
  if (hands.length === 0) throw new RangeError('a crew needs a hand');
  const places = new Map<string, number>();
  const busy = hands.map((): Promise<unknown> => Promise.resolve());
  let before: Promise<unknown> = Promise.resolve();

  function placeOf(asks: readonly Ask[], point: Point): number {
    const key = keyOf(asks, point);
    const place = places.get(key) ?? places.size % hands.length;
    places.set(key, place);
    return place;
  }

  async function told(
    asks: readonly Ask[],
    points: readonly Point[],
    { signal, onPoint }: CrewOptions,
  ): Promise<readonly (readonly Told[])[]> {
    signal?.throwIfAborted();
    const answers = new Array<readonly Told[]>(points.length);
    const placed = points.map((point) => placeOf(asks, point));
    let failed = false;
    const parts = hands.map((hand, place) => {
      const part = async (): Promise<void> => {
        for (const [i, point] of points.entries()) {
          if (placed[i] !== place || failed) continue;
          signal?.throwIfAborted();
          answers[i] = await hand.work(asks, point);
          onPoint?.(i, answers[i]!);
        }
      };
      const done = busy[place]!.then(part);
      done.catch(() => {
        failed = true;
      });
      busy[place] = done.catch(() => undefined);
      return done;
    });
    await Promise.all(parts);
    signal?.throwIfAborted();
    return answers;
  }

  return {
    size: hands.length,
    tell(asks, points, options = {}) {
      const work = told(asks, points, options);
      const inTurn = before.then(() => work);
      // Whoever was answered asks what comes next before the one behind is answered.
      before = inTurn.then(aTurn, aTurn);
      work.catch(() => undefined);
      return inTurn;
    },
  };
}

/** The state of the engines: the point, or at the study's own values what the asks themselves set. */
function keyOf(asks: readonly Ask[], point: Point): string {
  const set = Object.entries(point);
  if (set.length > 0) return JSON.stringify(set.sort(([a], [b]) => (a < b ? -1 : 1)));
  return JSON.stringify([...new Set(asks.map(({ throttle, inputs }) => JSON.stringify([throttle, inputs])))]);
}

const aTurn = (): Promise<void> => new Promise((resolve) => setTimeout(resolve));
