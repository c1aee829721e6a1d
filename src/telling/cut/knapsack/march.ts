/** Item after item is taken or left; beginnings that cannot come to more than others, or than what is known, go. */

import { type Beginning, continued } from './beginning.ts';
import { bitsOf } from './closures.ts';
import type { Rows } from './completions.ts';
import type { Taken } from './model.ts';
import type { Setting } from './setting.ts';

/** Rounding of sums of prices. */
export const ROUNDING = 1e-4;

export interface MarchEnd {
  /** Better than what was known; null where nothing is. */ readonly found: Omit<Taken, 'short'> | null;
  /** Nothing was left out that could be better. */ readonly isWhole: boolean;
  /** Beginnings looked at. */ readonly looked: number;
}

/** @param beam so many beginnings of each length are followed; @param most looked at */
export function march(setting: Setting, known: number, beam: number, most: number): MarchEnd {
  const { groupOf, completions } = setting;
  const { starts } = setting.relaxed;
  let layer: readonly Beginning[] = [nothingDecided(setting)].filter(({ bound }) => isBetter(bound, known));
  let [isWhole, looked] = [true, 0];
  let rows: Rows | null = null;
  for (let i = 0; i < groupOf.length && layer.length > 0; i++) {
    const group = groupOf[i]!;
    if (i === starts[group]) rows = completions?.rowsOf(group) ?? null;
    const step = { i, group, isLast: starts[group + 1] === i + 1, rows };
    const children = layer.flatMap((one) =>
      [true, false].flatMap((isTaken) => continued(one, step, isTaken, setting) ?? []),
    );
    looked += children.length;
    if (looked > most) return { found: null, isWhole: false, looked };
    layer = undominatedOf(
      children.filter(({ bound }) => isBetter(bound, known)),
      i,
    );
    if (layer.length > beam) {
      layer = [...layer].sort(byPromise).slice(0, beam);
      isWhole = false;
    }
  }
  const [best] = [...layer].sort((a, b) => b.weight - a.weight || a.time - b.time);
  const isFound = best !== undefined && best.weight > known;
  return { found: isFound ? takenBy(best, groupOf.length) : null, isWhole, looked };
}

function nothingDecided({ groupOf, prices, completions }: Setting): Beginning {
  const none = bitsOf(groupOf.length);
  const bound = Math.min(prices.bound, completions?.bound ?? Number.POSITIVE_INFINITY);
  return {
    ...{ time: 0, weight: 0, priced: 0, forced: none, barred: none, reserved: 0, isOpen: false },
    ...{ before: null, isTaken: false, rank: bound, bound },
  };
}

const byPromise = (a: Beginning, b: Beginning): number =>
  Math.floor(b.bound + ROUNDING) - Math.floor(a.bound + ROUNDING) || b.rank - a.rank || a.time - b.time;

/** What a beginning leaves open, as text. */
function keyOf({ isOpen, forced, barred }: Beginning, i: number): string {
  let key = isOpen ? '1' : '0';
  for (let k = i >>> 5; k < forced.length; k++) {
    const [a, b] = [forced[k]!, barred[k]!];
    key += String.fromCharCode(a >>> 16, a & 0xffff, b >>> 16, b & 0xffff);
  }
  return key;
}

const isBetter = (bound: number, known: number): boolean => Math.floor(bound + ROUNDING) > known;

/** Without those that are neither lighter in time nor heavier in weight than another that leaves the same open. */
function undominatedOf(all: readonly Beginning[], i: number): readonly Beginning[] {
  const alike = new Map<string, Beginning[]>();
  for (const one of all) {
    const key = keyOf(one, i);
    const list = alike.get(key);
    if (list === undefined) alike.set(key, [one]);
    else list.push(one);
  }
  return [...alike.values()].flatMap(undominated);
}

function undominated(all: readonly Beginning[]): readonly Beginning[] {
  if (all.length === 1) return all;
  const sorted = [...all].sort((a, b) => a.time - b.time || b.weight - a.weight);
  let best = Number.NEGATIVE_INFINITY;
  return sorted.filter(({ weight }) => {
    if (weight <= best) return false;
    best = weight;
    return true;
  });
}

function takenBy(end: Beginning, size: number): Omit<Taken, 'short'> {
  const taken = Array.from({ length: size }, () => false);
  let at = size - 1;
  for (let one: Beginning | null = end; one !== null && one.before !== null; one = one.before) {
    taken[at] = one.isTaken;
    at -= 1;
  }
  return { weight: end.weight, time: end.time, taken };
}
