/** The span of the separation criteria as a faint band beside a curve over altitude. */

import type { ConditionRow } from '../../answer/model.ts';
import type { Box } from '../scene/box.ts';
import type { Point } from '../scene/pathData.ts';

/** What the criteria make of the row's thrust or specific impulse; null where they agree. */
export function criteriaSpan(
  quantity: 'thrust' | 'specificImpulse',
  { separation, thrust }: ConditionRow,
): { readonly low: number; readonly high: number } | null {
  if (separation === undefined || separation.lettingGo === 0 || thrust === null) return null;
  return separation[quantity] ?? null;
}

/** Closed outlines, one for each run of rows whose criteria disagree, held inside the plot; `y` by the row's place in the list. */
export function spanOutlines(
  quantity: 'thrust' | 'specificImpulse',
  rows: readonly ConditionRow[],
  x: (value: number) => number,
  y: (row: number) => number,
  plot: Box,
): readonly (readonly Point[])[] {
  const held = (value: number): number => Math.min(Math.max(x(value), plot.x), plot.x + plot.width);
  const outlines: Point[][] = [];
  let run: { readonly low: Point[]; readonly high: Point[] } | null = null;
  const close = (): void => {
    if (run !== null && run.low.length > 1) outlines.push([...run.low, ...run.high.reverse()]);
    run = null;
  };
  rows.forEach((row, i) => {
    const span = criteriaSpan(quantity, row);
    if (span === null) {
      close();
      return;
    }
    run ??= { low: [], high: [] };
    run.low.push({ x: held(span.low), y: y(i) });
    run.high.push({ x: held(span.high), y: y(i) });
  });
  close();
  return outlines;
}
