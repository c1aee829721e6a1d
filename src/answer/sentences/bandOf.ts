/** Between which two values 95 % of the draws lie, by every published model that stands beside another. */

import { orderedAt } from '../../numerics/orderedAt.ts';
import type { AlternativeChoice, DrawnAsks, Row, RowsWanted } from './drawnAsks.ts';

export interface Band {
  readonly low: number;
  readonly high: number;
}

/** The lowest and the highest 2.5 % of the draws stay outside. */
const TAIL = 0.025;

/** Null where no draw has a value. @param wanted the asks that `evaluate` reads, by their places in the list */
export function bandOf(
  { count, eachRow }: Pick<DrawnAsks, 'count' | 'eachRow'>,
  choices: readonly (AlternativeChoice | undefined)[],
  wanted: Omit<RowsWanted, 'alternative'>,
  evaluate: (all: Row) => number | null,
): Band | null {
  const values = new Float64Array(Math.min(count, wanted.most ?? count));
  return widest(choices, (choice) => {
    let told = 0;
    eachRow({ ...wanted, alternative: choice }, (row) => {
      const value = evaluate(row);
      if (value !== null) values[told++] = value;
    });
    return middleOf(values.subarray(0, told));
  });
}

/** The same of one ask by itself, by its place in the list. */
export function bandOfAsk(
  { count, askBy }: Pick<DrawnAsks, 'count' | 'askBy'>,
  choices: readonly (AlternativeChoice | undefined)[],
  place: number,
): Band | null {
  const found = new Float64Array(count);
  return widest(choices, (choice) => {
    const { values, absent } = askBy(place, choice);
    let told = 0;
    for (let draw = 0; draw < count; draw++) {
      if (absent === null || absent[draw] !== 1) found[told++] = values[draw]!;
    }
    return middleOf(found.subarray(0, told));
  });
}

/** Takes in the bands by all models. */
function widest(
  choices: readonly (AlternativeChoice | undefined)[],
  bandBy: (choice: AlternativeChoice | undefined) => Band | null,
): Band | null {
  const bands = choices.flatMap((choice) => bandBy(choice) ?? []);
  if (bands.length === 0) return null;
  return {
    low: Math.min(...bands.map(({ low }) => low)),
    high: Math.max(...bands.map(({ high }) => high)),
  };
}

/** Moves the values about. */
function middleOf(values: Float64Array): Band | null {
  if (values.length === 0) return null;
  const last = values.length - 1;
  const lowest = Math.floor(TAIL * last);
  const low = orderedAt(values, lowest);
  return { low, high: orderedAt(values, Math.ceil((1 - TAIL) * last), lowest) };
}
