/**
 * Two rows of tokens laid beside each other at the least cost, over all ways, by dynamic programming
 *
 *   D(i, j) = min( D(i−1, j−1) + c(a_i, b_j), D(i−1, j) + g, D(i, j−1) + g )
 *
 * Source: S. B. Needleman, C. D. Wunsch, J. Mol. Biol. 48 (1970) 443–453 (from memory).
 */

import { ProblemError } from '../../numerics/problem.ts';
import type { SpokenToken } from './spokenTokens.ts';

/** Whole steps: a word alike is better than one left out and one put in. */
const COST = { alike: 1, numbers: 2, different: 3, gap: 2 } as const;
const NEVER = 9;
/** Bytes of costs kept at a time. */
const MOST_KEPT = 64_000_000;
/** Pairs that are looked at: a quarter of a byte each. */
const MOST_PAIRS = 1_200_000_000;
const [BOTH, UP, LEFT] = [0, 1, 2];

export interface Pair {
  /** Place in the one row, in the other; null where nothing stands beside it. */ readonly a: number | null;
  readonly b: number | null;
}

/** @param isSame two numbers that are the same */
export function align(
  a: readonly SpokenToken[],
  b: readonly SpokenToken[],
  isSame: (a: SpokenToken, b: SpokenToken) => boolean,
): readonly Pair[] {
  const width = b.length + 1;
  if ((a.length + 1) * width > MOST_PAIRS) {
    throw new ProblemError({
      code: 'film-too-long',
      what: `The script has ${a.length} words, the captions ${b.length}: too many to be held against each other.`,
      mend: 'Split the film and its script.',
    });
  }
  const ways = new Uint8Array(Math.ceil(((a.length + 1) * width) / 4));
  const setWay = (at: number, way: number): void => {
    ways[at >>> 2]! |= way << ((at & 3) << 1);
  };
  const { aKeys, bKeys, costsOf } = wordsOf(a, b);
  let before = Int32Array.from({ length: width }, (_, j) => COST.gap * j);
  for (let j = 1; j < width; j++) setWay(j, LEFT);
  for (let i = 1; i <= a.length; i++) {
    const row = new Int32Array(width);
    row[0] = COST.gap * i;
    setWay(i * width, UP);
    const key = aKeys[i - 1]!;
    const costs = costsOf(key);
    for (let j = 1; j < width; j++) {
      const other = bKeys[j - 1]!;
      const isNumber = key === 0 && other === 0;
      const cost = isNumber ? numbersCost(a[i - 1]!, b[j - 1]!, isSame) : costs[other]!;
      const [both, up, left] = [before[j - 1]! + cost, before[j]! + COST.gap, row[j - 1]! + COST.gap];
      if (both <= up && both <= left) row[j] = both;
      else {
        row[j] = Math.min(up, left);
        setWay(i * width + j, up <= left ? UP : LEFT);
      }
    }
    before = row;
  }
  return pairsBack(a.length, b.length, (at) => (ways[at >>> 2]! >>> ((at & 3) << 1)) & 3);
}

/** Words by number, 0 for what is a number itself; the cost of any two is found once. */
function wordsOf(a: readonly SpokenToken[], b: readonly SpokenToken[]) {
  const known = new Map<string, number>([['#', 0]]);
  const numbered = (tokens: readonly SpokenToken[]): Int32Array =>
    Int32Array.from(tokens, ({ key }) => {
      const found = known.get(key) ?? known.size;
      known.set(key, found);
      return found;
    });
  const [aKeys, bKeys] = [numbered(a), numbered(b)];
  const words = [...known.keys()];
  const rows = new Map<number, Uint8Array>();
  let kept = 0;
  /** Against every word. */
  const costsOf = (one: number): Uint8Array => {
    const before = rows.get(one);
    if (before !== undefined) return before;
    const row = Uint8Array.from(words, (word, other) => {
      if (one === other) return 0;
      return one === 0 || other === 0 ? NEVER : isAlike(words[one]!, word) ? COST.alike : COST.different;
    });
    kept += row.length;
    if (kept > MOST_KEPT) {
      rows.clear();
      kept = row.length;
    }
    rows.set(one, row);
    return row;
  };
  return { aKeys, bKeys, costsOf };
}

const numbersCost = (
  a: SpokenToken,
  b: SpokenToken,
  isSame: (a: SpokenToken, b: SpokenToken) => boolean,
): number => (isSame(a, b) ? 0 : COST.numbers);

/** One letter more, less or other; or the same beginning of four letters. */
export function isAlike(a: string, b: string): boolean {
  if (a === b) return true;
  if (a.length < 4 || b.length < 4 || Math.abs(a.length - b.length) > 3) return false;
  if (a.startsWith(b.slice(0, 4)) && Math.min(a.length, b.length) >= 5) return true;
  let front = 0;
  while (front < a.length && a[front] === b[front]) front++;
  let back = 0;
  while (back < Math.min(a.length, b.length) - front && a.at(-1 - back) === b.at(-1 - back)) back++;
  return Math.max(a.length, b.length) - front - back <= 1;
}

function pairsBack(rows: number, columns: number, wayAt: (at: number) => number): readonly Pair[] {
  const pairs: Pair[] = [];
  let [i, j] = [rows, columns];
  while (i > 0 || j > 0) {
    const way = wayAt(i * (columns + 1) + j);
    if (way === BOTH) pairs.push({ a: --i, b: --j });
    else if (way === UP) pairs.push({ a: --i, b: null });
    else pairs.push({ a: null, b: --j });
  }
  return pairs.reverse();
}
