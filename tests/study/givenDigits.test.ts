import { describe, expect, test } from 'vitest';
import { halfOfLastDigit, roundingOf } from '../../src/study/givenDigits.ts';

describe('half a unit of the last digit', () => {
  // By hand from the rule: decimals count as given; zeros at the end of a whole number are rounding while half of
  // their unit is at most 1 % of the number.
  test.each([
    ['331.4', 0.05],
    ['3.50', 0.005],
    ['25', 0.5],
    ['100', 0.5],
    ['100.0', 0.05],
    ['1700', 5],
    ['2090', 5],
    ['1522000', 500],
    ['500', 5],
    ['800', 0.5 * 10],
    ['1.5e6', 0.05e6],
    ['.25', 0.005],
    ['0', 0.5],
  ])('%s is ± %d', (digits, half) => {
    expect(halfOfLastDigit(digits)).toBeCloseTo(half, 12);
  });

  test('in SI, by the unit of the text', () => {
    // 1 lbf = 4.4482216152605 N exactly (0.45359237 kg × 9.80665 m/s²).
    expect(roundingOf('1522000 lbf', 'lbf')).toBeCloseTo(500 * 4.4482216152605, 6);
    expect(roundingOf('97.5 ± 1 %', '%')).toBeCloseTo(0.0005, 12);
    expect(roundingOf('20 °C', '°C')).toBe(0.5);
  });
});
