/** Quantities of the study taken over, as they are or in another unit. */

import type { Quantity, RangeSpread } from './model.ts';

/** The quantity and nothing that was read along with it. */
export function plainQuantity({ value, plusMinus, spread, text, path, byDefault }: Quantity): Quantity {
  return { value, plusMinus, ...(spread && { spread }), text, path, byDefault };
}

/** The same quantity over `factor` > 0: value, ± and range. */
export function quantityOver(quantity: Quantity, factor: number): Quantity {
  const { value, plusMinus, spread } = quantity;
  return {
    ...plainQuantity(quantity),
    value: value / factor,
    plusMinus: plusMinus === null ? null : plusMinus / factor,
    ...(spread && { spread: rangeOver(spread, factor) }),
  };
}

function rangeOver(spread: RangeSpread, factor: number): RangeSpread {
  const ends = { low: spread.low / factor, high: spread.high / factor };
  return spread.kind === 'even'
    ? { kind: 'even', ...ends }
    : { kind: 'triangular', ...ends, peak: spread.peak / factor };
}

/** The range in which the value lies, by ± or ends [SI]; null where it is exact or its spread is not stated. */
export function statedSpan({ value, plusMinus, spread }: Quantity): {
  readonly low: number;
  readonly high: number;
} | null {
  if (spread) return { low: spread.low, high: spread.high };
  return plusMinus === null ? null : { low: value - plusMinus, high: value + plusMinus };
}

/** Half of that range [SI]. */
export function halfSpan(quantity: Quantity): number | null {
  const span = statedSpan(quantity);
  return span && 0.5 * (span.high - span.low);
}
