/** Between which values a sweep that is tried out goes: as it is worth looking over, or as typed, in any unit. */

import { showStated } from '../../../answer/display.ts';
import { sweptKindOf } from '../../../study/sweepForm.ts';
import { parseQuantity } from '../../../study/units.ts';
import type { SweepChoice } from '../workshop/deskMessages.ts';

/** What is typed; null: nothing, the end is the usual one. */
export interface TypedEnds {
  readonly from: string | null;
  readonly to: string | null;
}
export const noEnds: TypedEnds = { from: null, to: null };

export interface Ends {
  readonly range: SweepChoice['range'];
  /** As shown in the fields. */ readonly from: string;
  readonly to: string;
  /** Told below the fields: that they were swapped, or what is wrong; null: nothing. */
  readonly words: string | null;
  /** One of them cannot be read, and the usual one stands in its place. */ readonly isFault: boolean;
}

export function endsOf({ name, quantity, range }: SweepChoice, typed: TypedEnds): Ends {
  const usual = { from: showStated(quantity, range.from).text, to: showStated(quantity, range.to).text };
  const shown = { from: typed.from ?? usual.from, to: typed.to ?? usual.to };
  const [from, to] = [read(name, typed.from), read(name, typed.to)];
  const fault = [from, to].find((end) => typeof end === 'string');
  if (typeof fault === 'string') return { range, ...shown, words: fault, isFault: true };
  const [low, high] = [(from as number | null) ?? range.from, (to as number | null) ?? range.to];
  if (low === high) {
    return { range, ...shown, words: 'Both ends are the same; the usual ones stand.', isFault: true };
  }
  const ends = { from: Math.min(low, high), to: Math.max(low, high) };
  return {
    range: { ...ends, spacing: ends.from > 0 ? range.spacing : 'even' },
    ...shown,
    words: low > high ? `Taken from ${shown.to} to ${shown.from}.` : null,
    isFault: false,
  };
}

/** SI; null where nothing is typed; words where it cannot be read. */
function read(name: string, text: string | null): number | string | null {
  const kind = sweptKindOf(name);
  if (text === null || text.trim() === '' || kind === null) return null;
  const parsed = parseQuantity(text, ...kind.kinds);
  return parsed.ok ? parsed.value.value : `${parsed.problem.what} ${parsed.problem.mend}`;
}
