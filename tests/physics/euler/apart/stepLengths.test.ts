/** Lengths of the steps of strips: closed form, from the definition of a stable step. */

import { expect, test } from 'vitest';
import type { Seam } from '../../../../src/physics/euler/apart/seams.ts';
import { stepLengthsFor } from '../../../../src/physics/euler/apart/stepLengths.ts';
import { type FlowPoint, newFlow } from '../../../../src/physics/euler/index.ts';
import { unevenSetup } from './apartCases.ts';

const still: FlowPoint = { density: 1, u: 0, v: 0, pressure: 1, share: 0 };
const toEachOther = [[{ other: 1 }], [{ other: 0 }]] as unknown as readonly (readonly Seam[])[];

/** Two strips alike in size; the first is blown through at `speed`, in the second the gas is still. */
function lengths(longest: readonly number[], speed = 0) {
  const { fields } = newFlow(unevenSetup(() => still));
  fields[0]!.u.fill(speed);
  return stepLengthsFor(fields, toEachOther)(longest, 0.8, 100);
}

test('a strip steps half as often as soon as its cells allow it', () => {
  expect(lengths([1, 2.1]).levels).toEqual([0, 1]);
  expect(lengths([1, 1.3]).levels).toEqual([0, 0]);
  expect(lengths([1, 4.3]).levels).toEqual([0, 2]);
});

test('where the quickest steps a little shorter than it could, another may step half as often', () => {
  const { levels, shortest } = lengths([1, 1.98]);
  expect(levels).toEqual([0, 1]);
  expect(shortest).toBeLessThanOrEqual(0.8 * 0.99);
  expect(shortest).toBeGreaterThan(0.8 * 0.97);
});

test('a whole number of steps fills the time, none longer than the share of the stable one', () => {
  const { highest, shortest } = lengths([1, 2.1]);
  expect(shortest).toBeLessThanOrEqual(0.8);
  expect((100 / (shortest * 2 ** highest)) % 1).toBeCloseTo(0, 9);
});

test('a strip of still gas is ready for the waves of the one beside it', () => {
  // Beside waves of 11.18 its own, of 1.18, pass a tenth of a cell: its step is cut from 6.4 to 0.85, so level 0; without them 2.
  expect(lengths([1, 8], 10).levels).toEqual([0, 0]);
  expect(lengths([1, 8]).levels).toEqual([0, 2]);
});
