/** Where a verdict turns, one line an input: both ends of the span of one input are told together. */

import type { FlipPoint } from './model.ts';

/** `mixture ratio: turns false below about 3 and above about 4`, in the order of the nearest end of each */
export function flipWords(flips: readonly FlipPoint[]): readonly string[] {
  const inputs = [...new Set(flips.map(({ input }) => input))];
  return inputs.map((input) =>
    flips
      .filter((flip) => flip.input === input)
      .map(({ words }, i) => (i === 0 ? words : words.replace(SAME_BEGINNING, '')))
      .join(' and '),
  );
}

/** The label of the input, and which way it turns. */
const SAME_BEGINNING = /^.*: turns (?:true|false) /u;
