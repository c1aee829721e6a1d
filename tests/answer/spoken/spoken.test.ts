import { describe, expect, test } from 'vitest';
import { catalogue } from '../../../src/answer/catalogue.ts';
import { numberInWords } from '../../../src/answer/spoken/numberWords.ts';
import { unitWords } from '../../../src/answer/spoken/unitWords.ts';
import { spoken } from '../../../src/answer/spoken.ts';
import { wordsToNumber } from './wordsToNumber.ts';

/** Evenly spread over the powers of ten, always the same. */
function* spread(count: number): Generator<number> {
  for (let i = 0; i < count; i++) yield 10 ** (-6 + (18 * i) / (count - 1));
}

describe('numbers in words', () => {
  // Expected words: English as spoken in Britain, common practice.
  test.each([
    [0, 'zero'],
    [1, 'one'],
    [13, 'thirteen'],
    [21, 'twenty-one'],
    [100, 'a hundred'],
    [120, 'a hundred and twenty'],
    [350, 'three hundred and fifty'],
    [1000, 'a thousand'],
    [1050, 'a thousand and fifty'],
    [1200, 'one thousand two hundred'],
    [3550, 'three thousand five hundred and fifty'],
    [12_500, 'twelve thousand five hundred'],
    [100_000, 'a hundred thousand'],
    [101_000, 'a hundred and one thousand'],
    [1_000_000, 'a million'],
    [1_200_000, 'one point two million'],
    [350e6, 'three hundred and fifty million'],
    [2e12, 'two trillion'],
    [2.4, 'two point four'],
    [0.05, 'zero point zero five'],
    [-2.4, 'minus two point four'],
    [2.5e-4, 'two hundred and fifty millionths'],
    [1e-6, 'one millionth'],
    [3e-12, 'three times ten to the minus twelve'],
  ])('%f: %s', (value, words) => {
    expect(numberInWords(value, 3).words).toBe(words);
  });

  test.each([2, 3, 6])('are read back from a millionth to a trillion, %i digits', (digits) => {
    for (const value of spread(4001)) {
      for (const signed of [value, -value]) {
        const { words } = numberInWords(signed, digits);
        const meant = Number(signed.toPrecision(digits));
        // Rounding of sums of decimals in the reader.
        expect(Math.abs(wordsToNumber(words) - meant), words).toBeLessThanOrEqual(1e-12 * Math.abs(meant));
      }
    }
  });

  test('every whole number up to 20 000 is read back', () => {
    for (let i = 0; i <= 20_000; i++) expect(wordsToNumber(numberInWords(i, 6).words)).toBe(i);
  });
});

describe('values in words', () => {
  test.each([
    ['chamber.pressure', 121e5, {}, 'about a hundred and twenty bar'],
    ['specificImpulse', 350, {}, 'three hundred and fifty seconds'],
    ['comparison.share', 0.024, {}, 'two point four per cent'],
    ['thrust', 800e3, {}, 'eight hundred kilonewtons'],
    ['thrust', 120, {}, 'a hundred and twenty newtons'],
    ['throat.diameter', 0.001, {}, 'one millimetre'],
    ['exit.velocity', 1, {}, 'one metre per second'],
    ['exit.mach', 4.137, {}, 'about four point one'],
    ['specificImpulse', 331.4, {}, 'about three hundred and thirty seconds'],
    ['specificImpulse', 331.4, { digits: 3 }, 'about three hundred and thirty-one seconds'],
    ['contour.lipAngle', -0.1, { digits: 2 }, 'about minus five point seven degrees'],
    [
      'air.density',
      1.225e-4,
      { digits: 2 },
      'about a hundred and twenty millionths of a kilogram per cubic metre',
    ],
  ] as const)('%s of %f', (name, value, options, words) => {
    expect(spoken(name, value, options)).toBe(words);
  });

  test('are off by no more than a hundredth', () => {
    for (const value of spread(2003)) {
      const said = wordsToNumber(spoken('areaRatio', value).replace('about ', ''));
      expect(Math.abs(said / value - 1)).toBeLessThanOrEqual(0.01);
    }
  });

  test('every unit of the catalogue can be said', () => {
    for (const { unit, unitForSmall, name } of catalogue) {
      expect(
        () => [unit, ...(unitForSmall ? [unitForSmall] : [])].map(({ symbol }) => unitWords(symbol)),
        name,
      ).not.toThrow();
    }
  });

  test('no number is no value to say', () => {
    expect(() => spoken('thrust', Number.NaN)).toThrow('cannot be said');
  });
});
