import { describe, expect, it } from 'vitest';
import { withPlusMinus } from '../../../src/telling/numbers/plusMinus.ts';

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
});
