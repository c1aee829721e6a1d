import type { Crew, Point } from '../../../src/answer/asked/crew.ts';
import type { Ask, Told } from '../../../src/answer/asked/model.ts';

/** A crew that works out given closed forms instead of engines. */
export function fakeCrew(
  of: (ask: Ask, point: Point) => Told | number,
  size = 2,
): Crew & { readonly asked: number } {
  let asked = 0;
  return {
    size,
    get asked() {
      return asked;
    },
    async tell(asks, points, { signal } = {}) {
      signal?.throwIfAborted();
      await Promise.resolve();
      signal?.throwIfAborted();
      return points.map((point) => {
        asked += 1;
        return asks.map((ask) => {
          const told = of(ask, point);
          return typeof told === 'number' ? { ok: true, value: told, scatter: [], alternatives: [] } : told;
        });
      });
    },
  };
}

/** The number of an input set on the ask. */
export function inputIn(ask: Ask, name: string): number {
  const found = ask.inputs.find(({ input }) => input === name);
  if (found === undefined) throw new Error(`${name} is not set`);
  return found.value;
}
