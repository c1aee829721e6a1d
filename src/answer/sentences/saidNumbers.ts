/** Numbers in the words of a sentence, held against its test and what is computed. */

import { sameDimension } from '../expression/dimensions.ts';
import type { Exponents } from '../expression/model.ts';
import type { Band } from './bandOf.ts';
import type { SaidNumber } from './model.ts';
import { type NumberInProse, numbersInProse } from './numbersInWords.ts';

/** One computed number that a said one may mean. */
export interface Computed {
  readonly words: string;
  readonly band: Band;
  readonly dimension: Exponents;
  /** By which share one is more than the other, or null where it is a number of its own. */
  readonly isShareMore: boolean;
}

/**
 * A said number agrees when the test states it, or when it lies in the band that is computed, its own rounding allowed.
 * Where nothing of its kind is stated or computed there is nothing to hold it against.
 *
 * @param test as written: its own numbers are what the words may repeat
 */
export function saidNumbersOf(
  say: string,
  test: string,
  computed: readonly Computed[],
): readonly SaidNumber[] {
  const stated = numbersInProse(test);
  return numbersInProse(say).map((said) => heldAgainst(said, stated, computed));
}

function heldAgainst(
  said: NumberInProse,
  stated: readonly NumberInProse[],
  computed: readonly Computed[],
): SaidNumber {
  const { text } = said;
  if (stated.some((one) => sameNumber(said, one))) {
    return { text, agrees: true, words: `“${text}” is the number of the test.` };
  }
  const alike = computed.filter((one) => sameDimension(one.dimension, said.dimension) && fitsKind(said, one));
  if (alike.length === 0) {
    return {
      text,
      agrees: null,
      words: `“${text}”: the test computes nothing that it could be held against.`,
    };
  }
  const fitting = alike.find((one) => agrees(said, one));
  if (fitting !== undefined) {
    return { text, agrees: true, words: `“${text}” fits what is computed: ${fitting.words}` };
  }
  return {
    text,
    agrees: false,
    words: `The sentence says ${text}, but what is computed is this: ${alike.map(({ words }) => words).join(' ')}`,
  };
}

const sameNumber = (a: NumberInProse, b: NumberInProse): boolean =>
  sameDimension(a.dimension, b.dimension) &&
  Math.abs(a.value - b.value) <= Math.max(a.rounding * 0.2, 1e-9 * Math.abs(a.value));

/** A per cent or a third may be a share by which one is more; a plain number with a unit is one of its own. */
const fitsKind = (said: NumberInProse, { isShareMore }: Computed): boolean =>
  isShareMore ? said.share : true;

function agrees(said: NumberInProse, { band, isShareMore }: Computed): boolean {
  const inside = (value: number, rounding: number): boolean =>
    value >= band.low - rounding && value <= band.high + rounding;
  if (!isShareMore) return inside(said.value, said.rounding) || inside(-said.value, said.rounding);
  const { value, rounding, times } = said;
  // Twice as much is once more; a third less, and a third of it, are both said.
  const meant = times ? [value - 1, value, -value] : [value, -value];
  return meant.some((one) => inside(one, rounding));
}
