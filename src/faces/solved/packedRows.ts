/** Rows of many altitudes on their way from worker to page: their fields as one block of numbers, opened one by one. */

import { fieldUpTo, type Likeness } from '../../answer/estimate/index.ts';
import type { ConditionRow } from '../../answer/model.ts';

type Field = NonNullable<ConditionRow['field']>;

/** Fields of several rows: how many lines, points of each line, then place and pressure of each point. */
export interface PackedRows {
  /** Without fields. */ readonly rows: readonly ConditionRow[];
  readonly numbers: Float32Array<ArrayBuffer>;
  /** Where the field of each row begins in `numbers`; −1: it has none. */ readonly starts: readonly number[];
}

const numbersOfPoint = 3;

export function packedRows(rows: readonly ConditionRow[]): PackedRows {
  const starts: number[] = [];
  let size = 0;
  for (const { field } of rows) {
    starts.push(field === undefined ? -1 : size);
    size += field === undefined ? 0 : sizeOf(field);
  }
  const numbers = new Float32Array(size);
  rows.forEach(({ field }, i) => {
    if (field !== undefined) writeInto(numbers, starts[i] ?? 0, field);
  });
  return { rows: rows.map(({ field: _, ...row }) => row), numbers, starts };
}

const sizeOf = (field: Field): number =>
  field.reduce((sum, line) => sum + 1 + numbersOfPoint * line.length, 1);

function writeInto(numbers: Float32Array, start: number, field: Field): void {
  let at = start;
  numbers[at++] = field.length;
  for (const line of field) {
    numbers[at++] = line.length;
    for (const { axial, radius, pressure } of line) {
      numbers[at++] = axial;
      numbers[at++] = radius;
      numbers[at++] = pressure;
    }
  }
}

/** One row with its field; the same object each time. */
export function openedRow(packed: PackedRows, index: number): ConditionRow | undefined {
  const row = packed.rows[index];
  const start = packed.starts[index] ?? -1;
  if (row === undefined || start < 0) return row;
  const known = opened.get(row);
  if (known !== undefined) return known;
  const whole: ConditionRow = { ...row, field: readField(packed.numbers, start, SAME) };
  opened.set(row, whole);
  return whole;
}

const opened = new WeakMap<ConditionRow, ConditionRow>();

const SAME: Likeness = { length: 1, pressure: 1 };

/** A row with the field of a packed one, at another size and pressure; as it is where that has none. */
export function rowLike(
  packed: PackedRows,
  row: ConditionRow,
  like: number,
  likeness: Likeness,
): ConditionRow {
  const start = packed.starts[like] ?? -1;
  return start < 0 ? row : { ...row, field: readField(packed.numbers, start, likeness) };
}

function readField(numbers: Float32Array, start: number, { length, pressure, upTo }: Likeness): Field {
  let at = start;
  const next = (): number => numbers[at++] ?? 0;
  const field = Array.from({ length: next() }, () =>
    Array.from({ length: next() }, () => ({
      axial: next() * length,
      radius: next() * length,
      pressure: next() * pressure,
    })),
  );
  if (upTo === undefined) return field;
  return fieldUpTo(field, upTo);
}
