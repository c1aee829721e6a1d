import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applied, changeBetween, conflicts, inverted } from '../../src/study/textChange.ts';

const texts = fc.string({ unit: fc.constantFrom('a', 'b', '\n', ' '), maxLength: 30 });

describe('a change of a text', () => {
  it('applied gives the new text, inverted the old one, whatever the texts', () => {
    fc.assert(
      fc.property(texts, texts, (before, after) => {
        const change = changeBetween(before, after);
        expect(applied(before, change)).toBe(after);
        expect(applied(after, inverted(change))).toBe(before);
      }),
      { seed: 11, numRuns: 500 },
    );
  });

  it('is as small as a common beginning and end allow', () => {
    expect(changeBetween('p: 100 bar\nq: 1\n', 'p: 130 bar\nq: 1\n')).toEqual({
      at: 4,
      removed: '0',
      inserted: '3',
    });
  });

  it('conflicts with another of the same place, not with one elsewhere, nor with itself', () => {
    const text = 'p: 100 bar\nr: 3.5\nq: 1\n';
    const pressure = changeBetween(text, text.replace('100', '130'));
    const other = changeBetween(text, text.replace('100', '120'));
    const ratio = changeBetween(text, text.replace('3.5', '3.2'));
    expect(conflicts(pressure, other)).toBe(true);
    expect(conflicts(other, pressure)).toBe(true);
    expect(conflicts(pressure, ratio)).toBe(false);
    expect(conflicts(pressure, pressure)).toBe(false);
    expect(conflicts(pressure, changeBetween(text, text))).toBe(false);
  });
});
