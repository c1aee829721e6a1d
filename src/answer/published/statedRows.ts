/** Published rows, and the inputs of the study beside them, as intervals to reckon with. */

import { roundingOf } from '../../study/givenDigits.ts';
import type { Ambient, EngineInput, PublishedRow, Quantity } from '../../study/model.ts';
import { halfSpan } from '../../study/plainQuantity.ts';
import { SETTLED_TEXT } from '../../study/publishedForm.ts';
import { parseQuantity } from '../../study/units.ts';
import { showStated } from '../display.ts';
import { ambientPressureOf } from './computedValue.ts';
import { leeway } from './figures.ts';
import { around, type Interval } from './interval.ts';

export interface Stated extends Interval {
  readonly quantity: string;
  /** [Pa]; null where the quantity is the same everywhere. */ readonly pressure: number | null;
  /** `in vacuum`, `at sea level`, …; empty where it is the same everywhere. */ readonly where: string;
  /** `published[2]`, or a path of the study. */ readonly row: string;
}

/** Least share of a value by which it may be off: a leeway as large as the value would leave no lower bound. */
const MOST_LEEWAY = 0.999;

function interval(value: number, allowed: number): Interval {
  return around(value, Math.min(allowed, MOST_LEEWAY * value));
}

export function statedRows(rows: readonly PublishedRow[]): readonly Stated[] {
  return rows.map((row, i) => ({
    ...interval(row.value.value, leeway(row)),
    quantity: row.quantity,
    pressure: row.at === null ? null : ambientPressureOf(row.at),
    where: row.at === null ? '' : placeWords(row.at),
    row: `published[${i}]`,
  }));
}

export function placeWords(at: Ambient): string {
  switch (at.kind) {
    case 'vacuum':
      return 'in vacuum';
    case 'altitude':
      return at.altitude.value === 0
        ? 'at sea level'
        : `at ${showStated('altitude', at.altitude.value).text}`;
    case 'pressure':
      return `in ${showStated('ambientPressure', at.pressure.value).text}`;
  }
}

/** Inputs that the study itself states and that the rows can be held against. */
export function statedInputs(input: EngineInput): readonly Stated[] {
  const { size, nozzle } = input;
  const found: Stated[] = [];
  const add = (quantity: string, stated: Quantity): void => {
    if (stated.byDefault || stated.text === SETTLED_TEXT) return;
    const parsed = parseQuantity(stated.text, 'number', 'length');
    const rounding = parsed.ok ? roundingOf(stated.text, parsed.value.unit) : 0;
    found.push({
      ...interval(stated.value, halfSpan(stated) ?? rounding),
      quantity,
      pressure: null,
      where: '',
      row: stated.path,
    });
  };
  add('areaRatio', nozzle.areaRatio);
  if (size.by === 'throat') add('throat.diameter', size.diameter);
  if (size.by === 'exit') add('exit.diameter', size.diameter);
  return found;
}
