/** Of a field laid over a plug that is cut shorter no more is kept than lies beside it. */

import { expect, test } from 'vitest';
import { fieldUpTo } from '../../../src/answer/estimate/index.ts';

const line = (...axials: number[]) => axials.map((axial) => ({ axial, radius: 1, pressure: 1e5 }));

test('lines end at their first point beyond the cut, those behind it go', () => {
  const field = [line(0, 0.1, 0.2), line(0.2, 0.4, 0.6, 0.8), line(0.7, 0.9)];
  expect(fieldUpTo(field, 0.5)).toEqual([line(0, 0.1, 0.2), line(0.2, 0.4, 0.6)]);
});
