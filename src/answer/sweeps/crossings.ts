/** Where two curves of one dimension have the same value. */

import { seekRoot } from '../../numerics/seekRoot.ts';
import { sameDimension } from '../expression/dimensions.ts';
import type { Crossing, ToldOf } from './model.ts';
import { type Sample, spanOf, valueIn } from './samples.ts';

/** A crossing is placed to this share of the range. */
const PLACED_TO = 2e-5;
/** A difference of this share of the values is none. */
const NONE = 1e-9;

export interface PlacedCrossing extends Crossing {
  readonly share: number;
}

/** @param at values of all curves at a share of the range, worked out; null where there is nothing between the samples */
export async function crossingsOf(
  samples: readonly Sample[],
  told: readonly ToldOf[],
  at: ((share: number) => Promise<Sample>) | null,
): Promise<readonly PlacedCrossing[]> {
  const pairs = told.flatMap((one, i) =>
    told.flatMap((other, j): [number, number][] =>
      j > i && sameDimension(one.dimension, other.dimension) ? [[i, j]] : [],
    ),
  );
  const found = await Promise.all(pairs.map((pair) => crossingsOfPair(samples, pair, at)));
  return found.flat().sort((a, b) => a.share - b.share);
}

async function crossingsOfPair(
  samples: readonly Sample[],
  pair: readonly [number, number],
  at: ((share: number) => Promise<Sample>) | null,
): Promise<readonly PlacedCrossing[]> {
  const scale = Math.max(
    ...pair.map((curve) => {
      const span = spanOf(samples, curve);
      return span === null ? 0 : Math.max(Math.abs(span.low), Math.abs(span.high));
    }),
  );
  const near = NONE * scale;
  const found: Promise<PlacedCrossing | null>[] = [];
  let before = null as Sample | null;
  for (const sample of samples) {
    const now = differenceAt(sample, pair);
    if (now === null) before = null;
    if (now === null || Math.abs(now) <= near) continue;
    const then = before === null ? null : differenceAt(before, pair);
    if (before !== null && then !== null && then > 0 !== now > 0) {
      found.push(placed(before, sample, pair, near, at));
    }
    before = sample;
  }
  return (await Promise.all(found)).flatMap((crossing) => crossing ?? []);
}

function differenceAt(sample: Sample, [i, j]: readonly [number, number]): number | null {
  const [one, other] = [valueIn(sample, i), valueIn(sample, j)];
  return one === null || other === null ? null : one - other;
}

async function placed(
  left: Sample,
  right: Sample,
  pair: readonly [number, number],
  near: number,
  at: ((share: number) => Promise<Sample>) | null,
): Promise<PlacedCrossing | null> {
  const [from, to] = [left, right].map((sample) => ({ x: sample.share, y: differenceAt(sample, pair)! }));
  const first: readonly [number, number] = from!.y > 0 ? pair : [pair[1], pair[0]];
  if (at === null) return null;
  const root = await seekRoot(
    async (share) => differenceAt(await at(share), pair),
    from!,
    to!,
    PLACED_TO,
    near,
  );
  const here = await at(root.x);
  const values = pair.map((curve) => valueIn(here, curve));
  if (values[0] === null || values[1] === null) return null;
  return { share: root.x, x: here.x, y: 0.5 * (values[0]! + values[1]!), curves: first, jump: root.jump };
}
