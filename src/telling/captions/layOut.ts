/** Words in one or two rows, parted where it reads best, the lower one rather the longer. */

import { breakCost } from './breaks.ts';
import type { CaptionRules } from './rules.ts';

export interface LaidOut {
  readonly rows: readonly string[];
  /** Of the break between the rows; 0 where there is none. */ readonly cost: number;
}

/** Words and what it costs to part each from the next. */
export interface Parts {
  readonly texts: readonly string[];
  readonly breaks: readonly number[];
}

export function partsOf(texts: readonly string[]): Parts {
  return {
    texts,
    breaks: texts.map((text, i) => (i + 1 < texts.length ? breakCost(text, texts[i + 1]!) : 0)),
  };
}

/** Null where they do not fit. @param from first word; @param to behind the last */
export function layOut(
  { texts, breaks }: Parts,
  from: number,
  to: number,
  { row, rows }: CaptionRules,
): LaidOut | null {
  let whole = -1;
  for (let i = from; i < to; i++) whole += texts[i]!.length + 1;
  const joined = (first: number, end: number): string => texts.slice(first, end).join(' ');
  if (whole <= row) return { rows: [joined(from, to)], cost: 0 };
  if (rows < 2 || whole > 2 * row + 1) return null;
  let [best, place] = [Number.POSITIVE_INFINITY, -1];
  let upper = -1;
  for (let at = from + 1; at < to; at++) {
    upper += texts[at - 1]!.length + 1;
    const lower = whole - upper - 1;
    if (upper > row) break;
    if (lower > row) continue;
    const uneven = Math.abs(lower - upper) / row + (upper > lower ? 0.3 : 0);
    const cost = 0.3 * breaks[at - 1]! + uneven;
    if (cost < best) [best, place] = [cost, at];
  }
  return place < 0 ? null : { rows: [joined(from, place), joined(place, to)], cost: best };
}
