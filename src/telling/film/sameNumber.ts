/** Whether what is said is the number that is meant: the same, or one that rounds to it. */

import type { NumberTold } from '../time/model.ts';
import type { NumberSaid } from './numberSaid.ts';

const EXACT = 1e-9;

/** @param live of which `meant` is what is written; null where it is typed by hand */
export function isSameNumber(meant: NumberSaid, said: NumberSaid, live: NumberTold | null): boolean {
  if (!isSameKind(meant, said)) return false;
  const close = (value: number): boolean =>
    Math.abs(said.value - value) <= said.rounding + EXACT * Math.abs(value) + EXACT;
  const isExact = Math.abs(said.value - meant.value) <= EXACT * Math.abs(meant.value);
  return isExact || close(meant.value) || (live !== null && isOfLive(meant, live) && close(live.value!));
}

export const isSameKind = (a: NumberSaid, b: NumberSaid): boolean =>
  a.dimension.every((exponent, i) => exponent === b.dimension[i]);

/** Of a span, only one end is written here: its middle is neither. */
function isOfLive(meant: NumberSaid, { value }: NumberTold): boolean {
  return value !== null && Math.abs(meant.value - value) <= meant.rounding + EXACT * Math.abs(value);
}
