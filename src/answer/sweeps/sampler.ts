/** Values of all curves at values of the input, each worked out once, whoever asks for it. */

import type { Crew, Point } from '../asked/crew.ts';
import type { Ask, Told } from '../asked/model.ts';
import type { Followed } from './followed.ts';
import type { SweepOptions } from './model.ts';
import { type ExpressionValue, valueWithBand } from './valueWithBand.ts';

/** What a place of the sweep stands for. */
export interface Stand {
  readonly asks: readonly Ask[];
  readonly point: Point;
}

export interface Sampler<Place> {
  /** One value an expression. */ at(place: Place): Promise<readonly ExpressionValue[]>;
  /** Places done so far. */ readonly done: number;
}

/**
 * @param keyOf equal keys are equal places
 * @param stand the asks and the point at a place
 * @param most how many places there may be, for progress
 */
export function samplerOf<Place>(
  followed: Followed,
  crew: Crew,
  keyOf: (place: Place) => string,
  stand: (place: Place) => Stand,
  most: number,
  { signal, onProgress }: Pick<SweepOptions<unknown>, 'signal' | 'onProgress'>,
): Sampler<Place> {
  const known = new Map<string, Promise<readonly ExpressionValue[]>>();
  let done = 0;

  async function find(place: Place): Promise<readonly ExpressionValue[]> {
    const { asks, point } = stand(place);
    const [told] = await crew.tell(asks, [point], signal === undefined ? {} : { signal });
    done += 1;
    onProgress?.(done, Math.max(most, done));
    return valuesOf(followed, told!);
  }

  return {
    at(place) {
      signal?.throwIfAborted();
      const key = keyOf(place);
      const found = known.get(key) ?? find(place);
      known.set(key, found);
      return found;
    },
    get done() {
      return done;
    },
  };
}

/** The same list where nothing moves in it: it then travels to other threads only once. */
export function movedAsks(asks: readonly Ask[], move: (ask: Ask) => Ask): readonly Ask[] {
  const moved = asks.map(move);
  return moved.every((ask, i) => ask === asks[i]) ? asks : moved;
}

function valuesOf({ expressions, places }: Followed, told: readonly Told[]): readonly ExpressionValue[] {
  return expressions.map((expression, i) =>
    valueWithBand(
      expression,
      places[i]!.map((place) => told[place]!),
    ),
  );
}
