/** How many digits of a number may be said: no more than its span allows, and no more than the one it is converted from. */

/** Where nothing spreads, and at most: more digits nobody hears. */
export const MOST_SAID_DIGITS = 3;
/** A span narrower than this share of the value is what is left of rounding. */
const NO_SPAN = 1e-9;

export interface RoundedNumber {
  /** Rounded. */ readonly value: number;
  /** Significant digits it is rounded to. */ readonly digits: number;
  /** The unit of its last digit. */ readonly step: number;
  /** Nothing is rounded away, and nothing of it is open. */ readonly isExact: boolean;
}

/** The order of the first digit; 0 for nothing. */
const orderOf = (value: number): number =>
  value === 0 ? 0 : Math.floor(Math.log10(Math.abs(value)) + 1e-12);

const powerOfTen = (order: number): number => Number(`1e${order}`);

/** @param isOpen its span is not nothing */
export function roundedTo(value: number, digits: number, isOpen: boolean): RoundedNumber {
  const rounded = Number(value.toPrecision(digits));
  const step = powerOfTen(orderOf(rounded) - digits + 1);
  const isExact = !isOpen && Math.abs(rounded - value) <= NO_SPAN * Math.abs(value);
  return { value: rounded, digits, step, isExact };
}

export const isOpenSpan = (value: number, low: number, high: number): boolean =>
  high - low > NO_SPAN * Math.abs(value);

/**
 * The last digit kept is the first that the span leaves open: its unit is the largest power of ten that is no wider than half the
 * span, what would stand behind a ±. Common practice with measured values, no source. Where that would put what is said
 * outside the span, more are kept.
 *
 * @param low high 95 % of what it may be lies between them, in the unit of `value`
 */
export function digitsAllowed(value: number, low: number, high: number, most = MOST_SAID_DIGITS): number {
  const half = (high - low) / 2;
  if (!isOpenSpan(value, low, high)) return most;
  const wanted = orderOf(value) - orderOf(half) + 1;
  const digits = Math.min(most, Math.max(1, wanted));
  for (let more = digits; more < most; more++) {
    const said = Number(value.toPrecision(more));
    if (said >= low && said <= high) return more;
  }
  return most;
}

/** Whether so many digits claim more than the span allows. */
export function claimsMore(value: number, low: number, high: number, digits: number): boolean {
  const needed = writtenDigits(Number(value.toPrecision(digits)));
  return isOpenSpan(value, low, high) && needed > digitsAllowed(value, low, high, digits);
}

/**
 * A converted number never looks more exact than the one it comes from: the unit of its last digit is not smaller than that of the
 * source. One digit is always said; what is exact is converted with three.
 *
 * @param source as it is said, in its own unit
 * @param perSource size of the source's unit in that of the converted number
 */
export function convertedDigits(source: RoundedNumber, perSource: number, converted: number): number {
  if (source.isExact) return MOST_SAID_DIGITS;
  const lastOrder = Math.ceil(Math.log10(source.step * Math.abs(perSource)) - 1e-9);
  const digits = orderOf(converted) - lastOrder + 1;
  return Math.min(source.digits + 1, Math.max(1, digits));
}

/** Digits that a number needs to be written, noughts at its end not counted: 1500 has two. */
function writtenDigits(value: number): number {
  return value.toExponential().split('e')[0]!.replace(/[-.]/g, '').length;
}
