/** A number with its ±, both to the digits that the ± allows. */

export interface WithPlusMinus {
  readonly number: string;
  readonly plusMinus: string;
}

/**
 * The ± to one significant digit, two where that digit is a 1, and the number to the same place (common practice).
 *
 * @param value in the unit shown
 * @param half  above 0, in the same unit
 */
export function withPlusMinus(value: number, half: number): WithPlusMinus {
  const digits = half.toExponential(0).startsWith('1') ? 1 : 0;
  const place = Math.floor(Math.log10(Number(half.toPrecision(digits + 1)))) - digits;
  return { number: toPlace(value, place), plusMinus: toPlace(half, place) };
}

/**
 * The ± that both ends of a span lie within: its longer side, so that an uneven span is not told too small. The ends
 * themselves are told beside it.
 */
export function widerSide(value: number, low: number, high: number): number {
  return Math.max(high - value, value - low);
}

/** To a power of ten, with a true minus. */
function toPlace(value: number, place: number): string {
  const step = 10 ** place;
  const text = place < 0 ? value.toFixed(-place) : String(Math.round(value / step) * step);
  return text.replace(/^-(0(\.0*)?)$/, '$1').replace('-', '\u2212');
}
