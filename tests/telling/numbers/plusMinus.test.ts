import { describe, expect, it } from 'vitest';
import { widerSide, withPlusMinus } from '../../../src/telling/numbers/plusMinus.ts';

describe('a number with its ±', () => {
  it.each([
    [334.12, 4.4, '334', '4'],
    [334.12, 1.37, '334.1', '1.4'],
    [5.31, 2.2, '5', '2'],
    [0.4812, 0.031, '0.48', '0.03'],
    [691_234, 21_000, '690000', '20000'],
    [-3.26, 0.5, '\u22123.3', '0.5'],
    [-0.02, 0.3, '0.0', '0.3'],
    [12, 0.96, '12.00', '0.96'],
  ])('%s ± %s', (value, half, number, plusMinus) => {
    expect(withPlusMinus(value, half)).toEqual({ number, plusMinus });
  });

  it('takes in both ends of an uneven span', () => {
    // 1.1 with ends 0.2 and 1.3: half the width would leave the lower one out.
    expect(withPlusMinus(1.1, widerSide(1.1, 0.2, 1.3))).toEqual({ number: '1.1', plusMinus: '0.9' });
    expect(widerSide(-1, -1.5, 2)).toBe(3);
  });
});
