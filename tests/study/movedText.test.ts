/** A quantity moved to another value keeps the words it is written in. */

import { describe, expect, it } from 'vitest';
import { movedText, numberInUnit } from '../../src/study/movedText.ts';
import { parseQuantity } from '../../src/study/units.ts';
import type { QuantityKind } from '../../src/study/unitTable.ts';

const moved = (text: string, kind: QuantityKind, number: number): string | null => {
  const parsed = parseQuantity(text, kind);
  if (!parsed.ok) throw new Error(parsed.problem.what);
  return movedText(text, parsed.value, number);
};

describe('a quantity moved to another value', () => {
  it('keeps unit and ±', () => {
    expect(moved('100 bar', 'pressure', 87.5)).toBe('87.5 bar');
    expect(moved('97.5 ± 1 %', 'share', 96)).toBe('96 ± 1 %');
    expect(moved('3.5 ± 0.05', 'number', 2)).toBe('2 ± 0.05');
    expect(moved('1450 psi', 'pressure', 0.1 + 0.2)).toBe('0.3 psi');
  });

  it('moves the ends of a range along', () => {
    expect(moved('95 to 97 %', 'share', 95.5)).toBe('94.5 to 96.5 %');
    expect(moved('2 to 4, most likely 2.5', 'number', 3)).toBe('2.5 to 4.5, most likely 3');
    expect(moved('10 to 12 kg/m3', 'density', 12)).toBe('11 to 13 kg/m3');
    expect(moved('0.9 bar to 95 kPa', 'pressure', 1)).toBeNull();
  });

  it('reads back as that value', () => {
    for (const [text, kind, number] of [
      ['100 bar', 'pressure', 42],
      ['20 °C', 'temperature', -5],
      ['80 %', 'share', 61.5],
    ] as const) {
      const parsed = parseQuantity(moved(text, kind, number) ?? '', kind);
      expect(parsed.ok && numberInUnit(parsed.value, parsed.value.value)).toBeCloseTo(number, 9);
    }
  });
});
