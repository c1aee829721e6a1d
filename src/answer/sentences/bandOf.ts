/** Between which two values 95 % of the draws lie, by every published model that stands beside another. */

import type { AlternativeChoice, DrawnAsks, Row } from './drawnAsks.ts';

export interface Band {
  readonly low: number;
  readonly high: number;
}

/** The lowest and the highest 2.5 % of the draws stay outside. */
const TAIL = 0.025;

/** Null where no draw has a value. */
export function bandOf(
  drawn: Pick<DrawnAsks, 'rows'>,
  choices: readonly (AlternativeChoice | undefined)[],
  evaluate: (all: Row) => number | null,
): Band | null {
  const bands = choices.flatMap((choice) => {
    const values: number[] = [];
    for (const row of drawn.rows(choice)) {
      const value = evaluate(row);
      if (value !== null) values.push(value);
    }
    return middleOf(values) ?? [];
  });
  if (bands.length === 0) return null;
  return {
    low: Math.min(...bands.map(({ low }) => low)),
    high: Math.max(...bands.map(({ high }) => high)),
  };
}

function middleOf(values: number[]): Band | null {
  if (values.length === 0) return null;
  const sorted = Float64Array.from(values).sort();
  const last = sorted.length - 1;
  return { low: sorted[Math.floor(TAIL * last)]!, high: sorted[Math.ceil((1 - TAIL) * last)]! };
}
