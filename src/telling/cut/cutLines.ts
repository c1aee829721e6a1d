/** Each line of a script with what a cut does to it, and why. */

import type { Script } from '../../study/script/model.ts';
import type { TimedScript } from '../time/model.ts';
import { hasBit } from './knapsack/closures.ts';
import type { CutLine } from './model.ts';
import type { Reliance, Settled } from './wishes.ts';

export function cutLines(
  { scenes }: Script,
  timed: TimedScript,
  reliance: Reliance,
  settled: Settled,
  kept: ReadonlySet<number>,
): readonly CutLine[] {
  const seconds = timed.scenes.flatMap(({ lines }) => lines.map((line) => line.seconds));
  const lines = scenes.flatMap((scene) => scene.lines.map((line) => ({ line, scene })));
  return lines.map(({ line, scene }, place) => ({
    id: line.id,
    scene: scene.id,
    kept: kept.has(place),
    ...(kept.has(place)
      ? whyKept(place, line.weight, reliance, settled, kept)
      : whyDropped(place, line.weight, reliance, settled, kept)),
    seconds: seconds[place]!,
    weight: line.weight,
  }));
}

type Why = Pick<CutLine, 'because' | 'with'>;

function whyKept(
  place: number,
  weight: number,
  { ids, needs }: Reliance,
  settled: Settled,
  kept: ReadonlySet<number>,
): Why {
  const askers = [...kept].filter((other) => needs[other]!.includes(place)).sort((a, b) => a - b);
  const with_ = askers.map((other) => ids[other]!);
  if (settled.kept.has(place)) return { because: 'kept by the writer', with: with_ };
  const isOnlyNeeded = settled.forced.has(place) || (weight === 0 && askers.length > 0);
  return { because: isOnlyNeeded ? 'relied on' : 'worth its time', with: with_ };
}

function whyDropped(
  place: number,
  weight: number,
  { ids, needs, closures }: Reliance,
  settled: Settled,
  kept: ReadonlySet<number>,
): Why {
  if (settled.left.has(place)) return { because: 'left by the writer', with: [] };
  if (settled.barred.has(place)) {
    const left = [...settled.left].filter((other) => hasBit(closures.below[place]!, other));
    return { because: 'relies on a line left', with: left.sort((a, b) => a - b).map((other) => ids[other]!) };
  }
  if (weight === 0) return { because: 'without weight', with: [] };
  const missing = needs[place]!.filter((other) => !kept.has(other));
  return { because: 'no room', with: missing.map((other) => ids[other]!) };
}
