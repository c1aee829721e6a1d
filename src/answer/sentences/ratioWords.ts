/** How many times one number another is, as people say it: `about twice`, `a little less than a third of`. */

import { plain, type SaidSpan, spanWords } from './spanWords.ts';

const NAMED: readonly (readonly [number, string])[] = [
  [1 / 10, 'a tenth of'],
  [1 / 5, 'a fifth of'],
  [1 / 4, 'a quarter of'],
  [1 / 3, 'a third of'],
  [1 / 2, 'half'],
  [2 / 3, 'two thirds of'],
  [3 / 4, 'three quarters of'],
  [2, 'twice'],
  [3, 'three times'],
  [4, 'four times'],
  [5, 'five times'],
  [10, 'ten times'],
];

/** Both ends within this share of a named one are about it; up to the other on one side, a little more or less. */
const NEAR = 0.07;
const A_LITTLE = 0.15;

/** A named part or multiple that both ends are near; null where there is none. */
function named(low: number, high: number, names: readonly (readonly [number, string])[]): SaidSpan | null {
  const fits =
    (from: number, to: number) =>
    (n: readonly [number, string]): boolean =>
      low >= n[0] * from && high <= n[0] * to;
  const pick = (from: number, to: number): readonly [number, string] | undefined =>
    names.filter(fits(from, to)).sort((a, b) => distance(a[0], low, high) - distance(b[0], low, high))[0];
  for (const [before, from, to] of [
    ['', 1 - 1e-6, 1 + 1e-6],
    ['a little more than ', 1, 1 + NEAR],
    ['a little less than ', 1 - NEAR, 1],
    ['about ', 1 - NEAR, 1 + NEAR],
    ['a little more than ', 1, 1 + A_LITTLE],
    ['a little less than ', 1 - A_LITTLE, 1],
  ] as const) {
    const found = pick(from, to);
    if (found !== undefined) {
      return { words: `${before}${found[1]}`, low: found[0] * from, high: found[0] * to };
    }
  }
  return null;
}

const distance = (n: number, low: number, high: number): number => Math.abs(Math.log((low + high) / 2 / n));

/** `about a third of`, `between 1.4 and 1.6 times`: what stands before the other number. */
export function timesWords(low: number, high: number): SaidSpan {
  const found = low > 0 ? named(low, high, NAMED) : null;
  if (found !== null) return found;
  if (low > 0 && high < 0.95) {
    const share = spanWords(low, high, { symbol: '%', perSI: 100 });
    return { ...share, words: `${share.words} of` };
  }
  const span = spanWords(low, high, { symbol: '', perSI: 1 });
  return { ...span, words: `${span.words} times` };
}

const PARTS: readonly (readonly [number, string])[] = [
  [1 / 4, 'a quarter'],
  [1 / 3, 'a third'],
];

/**
 * By which share one is more than the other: `about a third more than`, `between 3 and 5 % less than`,
 * `from 2 % less than to 3 % more than` where the sign is open. Never “a little more than a third more than”, never “half more than”.
 */
export function moreWords(low: number, high: number): SaidSpan {
  if (low > -SAME && high < SAME) return { words: 'the same as', low: -SAME, high: SAME };
  const near = NEARLY_SAME.find((share) => low >= -share && high <= share);
  if (near !== undefined) {
    return { words: `the same within ${plain(near * 100)}\u00a0% as`, low: -near, high: near };
  }
  if (low < 0 && high > 0) return openWords(low, high);
  if (low >= 1 - NEAR) {
    const times = timesWords(1 + low, 1 + high);
    return { words: times.words, low: times.low - 1, high: times.high - 1 };
  }
  const less = high <= 0;
  const [from, to] = less ? [-high, -low] : [low, high];
  const part = named(from, to, PARTS);
  const span =
    part === null || part.words.startsWith('a little')
      ? spanWords(from, to, { symbol: '%', perSI: 100 })
      : part;
  const words = `${span.words} ${less ? 'less' : 'more'} than`;
  return less ? { words, low: -span.high, high: -span.low } : { words, low: span.low, high: span.high };
}

/** Departures smaller than this are what is left of rounding. */
const SAME = 1e-6;
/** Both ends within one of these are told as the same: more digits say nothing. */
const NEARLY_SAME = [0.0001, 0.0005, 0.001];

/** A named part or multiple where one fits; near to each other, by how much more or less. */
export function timesOrMoreWords(low: number, high: number): SaidSpan {
  const times = timesWords(1 + low, 1 + high);
  const shifted = { words: times.words, low: times.low - 1, high: times.high - 1 };
  if (!/^(?:about|between|\d)/.test(times.words) || !/times$|%\sof$/u.test(times.words)) return shifted;
  return low > -0.4 && high < 0.9 ? moreWords(low, high) : shifted;
}

function openWords(low: number, high: number): SaidSpan {
  const down = outwardsPercent(-low);
  const up = outwardsPercent(high);
  return {
    words: `anything from ${plain(down)}\u00a0% less to ${plain(up)}\u00a0% more than`,
    low: -down / 100,
    high: up / 100,
  };
}

/** Per cent upwards to one digit, or two where one would be far off. */
function outwardsPercent(share: number): number {
  const percent = share * 100;
  const power =
    10 ** (Math.floor(Math.log10(percent)) - (String(percent.toPrecision(1)).startsWith('1') ? 1 : 0));
  return Number((Math.ceil(percent / power - 1e-9) * power).toPrecision(6));
}
