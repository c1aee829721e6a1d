import { describe, expect, it } from 'vitest';
import type { ConditionRow } from '../../../src/answer/model.ts';
import { openedRow, packedRows } from '../../../src/faces/solved/packedRows.ts';

const row = (altitude: number, field?: ConditionRow['field']): ConditionRow =>
  ({
    altitude,
    ambientPressure: 1e5 - altitude,
    thrust: 1,
    thrustIfFull: 1,
    specificImpulse: 1,
    thrustCoefficient: 1,
    thrustParts: [],
    flow: {
      state: 'full',
      criterion: '',
      lipPressure: 1,
      separationPressure: 1,
    } as unknown as ConditionRow['flow'],
    exitPressure: 1,
    ...(field === undefined ? {} : { field }),
  }) as unknown as ConditionRow;
const point = (k: number) => ({ axial: k / 8, radius: k / 4, pressure: 1024 * k });

describe('rows packed for the way to the page', () => {
  // Eighths and thousands of 1024 are exact in 32 bits.
  const rows = [
    row(0, [
      [point(1), point(2)],
      [point(3), point(4), point(5)],
    ]),
    row(100),
    row(200, [[point(6)], []]),
  ];
  it('come out as they went in, lines of any length', () => {
    const packed = packedRows(rows);
    for (const [i, one] of rows.entries()) expect(openedRow(packed, i)).toEqual(one);
    expect(openedRow(packed, 3)).toBeUndefined();
  });

  it('are opened once, so that a drawing of one can be kept', () => {
    const packed = packedRows(rows);
    expect(openedRow(packed, 0)).toBe(openedRow(packed, 0));
    expect(packed.rows.some(({ field }) => field !== undefined)).toBe(false);
  });
});
