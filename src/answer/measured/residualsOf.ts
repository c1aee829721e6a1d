/** Residuals of measured points, all together. */

import type { MeasuredPoint, MeasuredSeries } from './model.ts';

/** Root of their mean square, and their mean; null where there are none. */
export function residualsOf(points: readonly MeasuredPoint[]): Pick<MeasuredSeries, 'rms' | 'bias'> {
  const residuals = points.flatMap(({ residual }) => residual ?? []);
  const mean = (of: (residual: number) => number): number | null =>
    residuals.length === 0 ? null : residuals.reduce((sum, one) => sum + of(one), 0) / residuals.length;
  const square = mean((residual) => residual ** 2);
  return { rms: square === null ? null : Math.sqrt(square), bias: mean((residual) => residual) };
}
