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

/** A number that the study states. */
export interface StatedInput {
  /** [SI] */ readonly value: number;
  /** `area ratio of Alder B` */ readonly label: string;
}

/**
 * A said number agrees when the test or the study states it, or when it lies in the band that is computed, its own rounding
 * allowed. It contradicts when it is the only one of its kind in the sentence that agrees with nothing, and something of its
 * kind is computed: beside another that agrees it is taken for a condition (“ten times the pressure gives two per cent”).
 *
 * @param test as written: its own numbers are what the words may repeat
 * @param inputs what the study states of the engines that are asked
 */
export function saidNumbersOf(
  say: string,
  test: string,
  computed: readonly Computed[],
  inputs: readonly StatedInput[] = [],
): readonly SaidNumber[] {
  const stated = numbersInProse(test);
  const numbers = numbersInProse(say);
  const agreeing = numbers.map((said) => agreement(said, stated, computed, inputs));
  const open = numbers.filter((_, i) => agreeing[i] === null);
  return numbers.map((said, i) => {
    const { text } = said;
    const words = agreeing[i];
    if (words !== null && words !== undefined) return { text, agrees: true, words };
    const alike = computed.filter((one) => isAlike(said, one));
    const alone =
      open.filter((one) => one.share === said.share).length === 1 &&
      !numbers.some((one, k) => agreeing[k] !== null && one.share === said.share);
    if (alike.length === 0 || !alone) {
      return {
        text,
        agrees: null,
        words: `“${text}”: there is nothing computed that it could be held against.`,
      };
    }
    return {
      text,
      agrees: false,
      words: `The sentence says ${text}, but what is computed is this: ${alike.map((one) => one.words).join(' ')}`,
    };
  });
}

/** What it agrees with, in words; null: nothing. */
function agreement(
  said: NumberInProse,
  stated: readonly NumberInProse[],
  computed: readonly Computed[],
  inputs: readonly StatedInput[],
): string | null {
  if (stated.some((one) => sameNumber(said, one))) return `“${said.text}” is the number of the test.`;
  const input = said.times
    ? undefined
    : inputs.find(({ value }) => Math.abs(value - said.value) <= 1e-6 * Math.abs(said.value));
  if (input !== undefined) return `“${said.text}” is stated in the study: ${input.label}.`;
  const fitting = computed.find((one) => isAlike(said, one) && agrees(said, one));
  return fitting === undefined ? null : `“${said.text}” fits what is computed: ${fitting.words}`;
}

const isAlike = (said: NumberInProse, one: Computed): boolean =>
  sameDimension(one.dimension, said.dimension) && fitsKind(said, one);

/** A share may stand for what is left of the whole, or comes on top of it: 98 % of it is 2 % less. */
const sameNumber = (a: NumberInProse, b: NumberInProse): boolean => {
  if (!sameDimension(a.dimension, b.dimension)) return false;
  const meant = a.share ? [b.value, 1 - b.value, b.value - 1] : [b.value];
  return meant.some(
    (value) => Math.abs(a.value - value) <= Math.max(a.rounding * 0.4, 1e-9 * Math.abs(a.value)),
  );
};

/** A per cent or a third may be a share by which one is more; a plain number with a unit is one of its own. */
const fitsKind = (said: NumberInProse, { isShareMore }: Computed): boolean =>
  isShareMore ? said.share : !said.times;

function agrees(said: NumberInProse, { band, isShareMore }: Computed): boolean {
  const inside = (value: number, rounding: number): boolean =>
    value >= band.low - rounding && value <= band.high + rounding;
  if (!isShareMore) return inside(said.value, said.rounding) || inside(-said.value, said.rounding);
  const { value, rounding, times } = said;
  // Twice as much is once more; a third less, and a third of it, are both said.
  const meant = times ? [value - 1, value, -value] : [value, -value];
  return meant.some((one) => inside(one, rounding));
}
