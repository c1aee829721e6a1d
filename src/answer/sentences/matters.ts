/** What the spread of a test's margin hangs on, ranked by total effect. */

import { mattersMost } from '../spread/index.ts';
import type { DrawnAsks } from './drawnAsks.ts';
import { shareText } from './judge.ts';
import type { SpreadShare } from './model.ts';
import type { PlacedTest } from './shareOf.ts';

/** Shares below this are not told. */
const LEAST_TOLD = 0.02;

/** Empty where nothing is open, or where the margin is absent somewhere. */
export function whatMatters(
  { test, places }: PlacedTest,
  { drawn, sources }: DrawnAsks,
): readonly SpreadShare[] {
  return mattersMost(drawn, places, test.margin).flatMap(({ unknown, share }) => {
    const name = unknown.kind === 'input' ? unknown.path : unknown.name;
    const label = sources.find((one) => one.name === name)?.label ?? name;
    const told = Math.min(1, Math.max(0, share));
    if (told < LEAST_TOLD) return [];
    return [{ source: name, share: told, words: `${label} (${shareText(Number(told.toFixed(2)))})` }];
  });
}

/** `mostly on the mixture ratio (70 %)`; null where nothing is told. */
export function mostlyWords([first, second]: readonly SpreadShare[]): string | null {
  if (first === undefined) return null;
  if (first.share >= 0.5 || second === undefined) return `mostly on the ${first.words}`;
  return `most of all on the ${first.words} and the ${second.words}`;
}
