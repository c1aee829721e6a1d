/** Words in one or two rows, parted where it reads best, the lower one rather the longer. */

import { breakCost } from './breaks.ts';
import type { CaptionRules } from './rules.ts';

export interface LaidOut {
  readonly rows: readonly string[];
  /** Of the break between the rows; 0 where there is none. */ readonly cost: number;
}

/** Null where they do not fit. @param from first word; @param to behind the last */
export function layOut(
  words: readonly string[],
  from: number,
  to: number,
  { row, rows }: CaptionRules,
): LaidOut | null {
  const whole = words.slice(from, to).join(' ');
  if (whole.length <= row) return { rows: [whole], cost: 0 };
  if (rows < 2 || whole.length > 2 * row + 1) return null;
  let best: LaidOut | null = null;
  let upper = '';
  for (let at = from + 1; at < to; at++) {
    upper = upper === '' ? words[at - 1]! : `${upper} ${words[at - 1]!}`;
    if (upper.length > row) break;
    const lower = whole.length - upper.length - 1;
    if (lower > row) continue;
    const uneven = Math.abs(lower - upper.length) / row + (upper.length > lower ? 0.3 : 0);
    const cost = 0.3 * breakCost(words[at - 1]!, words[at]!) + uneven;
    if (best === null || cost < best.cost) best = { rows: [upper, whole.slice(upper.length + 1)], cost };
  }
  return best;
}
