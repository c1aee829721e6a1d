/** A positive quantity with the least and greatest value that its source allows. */
export interface Interval {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

export function around(value: number, leeway: number): Interval {
  return { value, low: value - leeway, high: value + leeway };
}

/** a · b; both factors are positive. */
export function product(a: Interval, b: Interval): Interval {
  return { value: a.value * b.value, low: a.low * b.low, high: a.high * b.high };
}

/** a / b; b is positive throughout, a may be of any sign. */
export function quotient(a: Interval, b: Interval): Interval {
  return {
    value: a.value / b.value,
    low: a.low / (a.low < 0 ? b.low : b.high),
    high: a.high / (a.high < 0 ? b.high : b.low),
  };
}

export function less(a: Interval, b: Interval): Interval {
  return { value: a.value - b.value, low: a.low - b.high, high: a.high - b.low };
}

export function scaled(a: Interval, factor: number): Interval {
  return { value: factor * a.value, low: factor * a.low, high: factor * a.high };
}

/** By how much two intervals miss each other; 0 where they touch. */
export function gap(a: Interval, b: Interval): number {
  return Math.max(0, a.low - b.high, b.low - a.high);
}
