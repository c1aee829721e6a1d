/**
 * Exact: item after item is taken or left; of the beginnings that leave the same needs open, those that are neither lighter
 * in time nor heavier in weight go; so do those whose bound does not pass the best that is known.
 */

import { closuresOf } from './closures.ts';
import { type Completions, completionsOf } from './completions.ts';
import { march, ROUNDING } from './march.ts';
import type { ClosureKnapsack, Taken } from './model.ts';
import { type Arc, findPrices, type Prices, type Relaxed } from './relaxation.ts';
import { type Readied, settingOf } from './setting.ts';

/** Beginnings kept a step while a first good choice is sought. */
const FIRST_BEAM = 60;
/** The same for a better one. */
const SECOND_BEAM = 1500;

/** @param mostBeginnings looked at before it is left at the best that was found */
export function solveClosureKnapsack(problem: ClosureKnapsack, mostBeginnings: number): Taken {
  const readied = ready(problem);
  const { relaxed } = readied;
  let best: Taken = { weight: 0, time: 0, taken: readied.groupOf.map(() => false), short: 0 };
  let looked = 0;
  const run = (prices: Prices, beam: number, completions: Completions | null): boolean => {
    const end = march(settingOf(readied, prices, completions), best.weight, beam, mostBeginnings - looked);
    looked += end.looked;
    if (end.found !== null) best = { ...end.found, short: 0 };
    return end.isWhole;
  };
  const first = findPrices(relaxed, 0);
  if (run(first, FIRST_BEAM, null)) return best;
  const prices = findPrices(relaxed, best.weight, first);
  const completions = completionsOf(relaxed, prices.priced);
  const isSettled = [FIRST_BEAM, SECOND_BEAM, Number.POSITIVE_INFINITY].some((beam) =>
    run(prices, beam, completions),
  );
  if (isSettled) return best;
  const bound = Math.min(prices.bound, completions?.bound ?? Number.POSITIVE_INFINITY);
  return { ...best, short: Math.max(0, Math.floor(bound + ROUNDING) - best.weight) };
}

function ready({ room, groups }: ClosureKnapsack): Readied {
  const items = groups.flatMap((group) => group.items);
  const needs = items.map((item) => item.needs);
  const starts = [0];
  for (const group of groups) starts.push(starts.at(-1)! + group.items.length);
  const arcs: readonly Arc[] = needs.flatMap((list, from) => list.map((to) => ({ from, to })));
  const isAlone = items.map(() => true);
  for (const { from, to } of arcs) isAlone[from] = isAlone[to] = false;
  const relaxed: Relaxed = {
    room,
    times: Float64Array.from(items, ({ time }) => time),
    weights: Float64Array.from(items, ({ weight }) => weight),
    starts,
    bonuses: groups.map(({ bonus }) => bonus),
    arcs,
  };
  const groupOf = groups.flatMap((group, g) => group.items.map(() => g));
  return { relaxed, closures: closuresOf(needs), groupOf, isAlone };
}
