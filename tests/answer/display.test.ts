import { describe, expect, test } from 'vitest';
import { roundedText, show, showStated } from '../../src/answer/display.ts';

describe('rounded numbers', () => {
  test.each([
    [345.7279, 4, '345.7'],
    [999.96, 4, '1000'],
    [0.0999996, 3, '0.100'],
    [1234.5, 4, '1235'],
    [12345.6, 5, '12\u202f346'],
    [-3.25, 2, '−3.3'],
    [0, 4, '0'],
    [0.00012345, 3, '0.000123'],
    [0.000012345, 3, '1.23e-5'],
    [2.5e9, 2, '2.5e+9'],
  ])('%d to %d digits is %s', (value, digits, text) => {
    expect(roundedText(value, digits)).toBe(text);
  });
});

describe('a quantity in its own unit', () => {
  test('large and small thrust', () => {
    expect(show('thrust', 800_000).text).toBe('800.0 kN');
    expect(show('thrust', 22.2).text).toBe('22.20 N');
  });

  test.each([
    ['areaRatio', 25, '25'],
    ['areaRatio', 10.984, '10.98'],
    ['chamber.efficiency', 0.975, '97.5 %'],
    ['nozzle.length', 0.8, '80 %'],
    ['nozzle.halfAngle', (15 * Math.PI) / 180, '15°'],
    ['altitude', 10_000, '10 km'],
    ['altitude', 500, '0.5 km'],
    ['propellants.gamma', 1.222, '1.222'],
    ['propellants.ratio', 0.05, '0.05'],
  ])('stated %s %d is %s', (name, value, text) => {
    expect(showStated(name, value).text).toBe(text);
  });
});
