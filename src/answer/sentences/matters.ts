/** What the spread of a test's margin hangs on, ranked by total effect. */

import { effectsOf } from '../../numerics/effects.ts';
import type { DrawnAsks } from '../spread/model.ts';
import { shareText } from './judge.ts';
import type { SpreadShare } from './model.ts';
import { ownValues, type PlacedTest } from './shareOf.ts';

/** Shares below this are not told. */
const LEAST_TOLD = 0.02;
const EFFORT = { count: 128, scramblings: 4 };

/** Empty where nothing is open, or where the margin is absent somewhere. */
export function whatMatters(placed: PlacedTest, drawn: DrawnAsks): readonly SpreadShare[] {
  const { sources } = drawn;
  if (sources.length === 0) return [];
  let absent = false;
  const { total, variance } = effectsOf(
    (quantiles) => {
      const margin = placed.test.margin(ownValues(placed, drawn.valuesAt(quantiles)));
      if (margin === null) absent = true;
      return margin ?? 0;
    },
    sources.length,
    EFFORT,
  );
  if (absent || variance === 0) return [];
  return sources
    .map(({ name, label }, i) => {
      const share = Math.min(1, Math.max(0, total[i] ?? 0));
      return { source: name, share, words: `${label} (${shareText(Number(share.toFixed(2)))})` };
    })
    .filter(({ share }) => share >= LEAST_TOLD)
    .sort((a, b) => b.share - a.share);
}

/** `mostly the mixture ratio (70 %)`; null where nothing is told. */
export function mostlyWords([first, second]: readonly SpreadShare[]): string | null {
  if (first === undefined) return null;
  if (first.share >= 0.5 || second === undefined) return `mostly ${first.words}`;
  return `${first.words} and ${second.words} most of all`;
}
