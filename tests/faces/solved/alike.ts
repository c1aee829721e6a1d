/** Two answers held against each other, whichever was asked for more before: that moves the last digits of a number. */

import { expect } from 'vitest';

/** Of the larger of the two; nothing that is told has more than six digits. */
const WITHIN = 1e-9;
/** What is nought but for rounding is so in either: an angle of a jet that goes straight on. */
const NOUGHT = 1e-11;

/** The same words, the same shape, and numbers alike. @throws where they are not, with the place */
export function expectAlike(found: unknown, wanted: unknown, place = 'answer'): void {
  if (typeof found === 'number' && typeof wanted === 'number') {
    const most = Math.max(Math.abs(found), Math.abs(wanted));
    if (found === wanted || Math.abs(found - wanted) <= WITHIN * most + NOUGHT) return;
    expect.fail(`${place}: ${found} in place of ${wanted}`);
  }
  if (typeof found !== 'object' || typeof wanted !== 'object' || found === null || wanted === null) {
    expect(found, place).toEqual(wanted);
    return;
  }
  const keys = (of: object): readonly string[] =>
    Object.keys(of)
      .filter((key) => (of as Record<string, unknown>)[key] !== undefined)
      .sort();
  expect(keys(found), place).toEqual(keys(wanted));
  for (const [key, inner] of Object.entries(found))
    expectAlike(inner, (wanted as Record<string, unknown>)[key], `${place}.${key}`);
}
