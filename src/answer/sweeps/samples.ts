/** What has been sampled of the curves so far, in the order of the input. */

import type { ExpressionValue } from './valueWithBand.ts';

/** One value of the input. */
export interface Sample {
  /** Share of the way along the range, 0 to 1. */ readonly share: number;
  readonly x: number;
  /** One an expression. */ readonly values: readonly ExpressionValue[];
}

export const valueIn = (sample: Sample, curve: number): number | null => {
  const value = sample.values[curve]!;
  return value.ok ? value.value : null;
};

/** Least and largest value of a curve; null where it has none. */
export function spanOf(
  samples: readonly Sample[],
  curve: number,
): { readonly low: number; readonly high: number } | null {
  const values = samples.flatMap((sample) => valueIn(sample, curve) ?? []);
  if (values.length === 0) return null;
  return { low: Math.min(...values), high: Math.max(...values) };
}

/** Smaller differences, as a share of the value, are the last digits of an iteration. */
const SAME = 1e-6;

/** Whether all values are the same but for the last digits. */
export function isConstant(span: { readonly low: number; readonly high: number }): boolean {
  return span.high - span.low <= SAME * Math.max(Math.abs(span.low), Math.abs(span.high));
}
