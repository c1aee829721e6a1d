import { describe, expect, test } from 'vitest';
import { saidWords, writtenTokens } from '../../../src/telling/time/saidWords.ts';

const said = (text: string): string => saidWords(text).join(' ');

// How English is read aloud: common practice, no source.
describe('figures, units and formulas count as they are said', () => {
  test.each([
    ['122.5 bar', 'a hundred and twenty two point five bar'],
    ['The wall holds 122.5 bar, no more.', 'The wall holds a hundred and twenty two point five bar no more'],
    ['1 m', 'one metre'],
    ['20 km/s', 'twenty kilometres per second'],
    ['9.81 m/s²', 'nine point eight one metre s per second squared'.replace('metre s', 'metres')],
    ['3.0 %', 'three point zero per cent'],
    ['50%', 'fifty per cent'],
    ['1,200 psi', 'one thousand two hundred pounds per square inch'],
    ['800 kN/m²', 'eight hundred kilonewtons per square metre'],
    ['12 000 km', 'twelve thousand kilometres'],
    ['20 °C', 'twenty degrees Celsius'],
    ['-5', 'minus five'],
    ['−5.5 K', 'minus five point five kelvins'],
    ['5 ± 0.1', 'five plus or minus zero point one'],
    ['In 1957 it flew.', 'In nineteen fifty seven it flew'],
    ['in 2005', 'in two thousand and five'],
    ['1900 kg', 'one thousand nine hundred kilograms'],
    ['a ratio of 3:1', 'a ratio of three to one'],
    ['2–3 times', 'two to three times'],
    ['F = m·a', 'F equals m times a'],
    ['p/q', 'p over q'],
    ['10⁵ Pa', 'ten to the five Pa'],
    ['v²', 'v squared'],
    ['CH4', 'C H four'],
    ['H2O and CO2', 'H two O and C O two'],
    ['Δv', 'delta v'],
    ['a well-known one – isn’t it?', 'a well known one isn’t it'],
    ['12 in a row', 'twelve in a row'],
    ['', ''],
    [' \u00a0\n', ''],
  ])('%s', (text, words) => expect(said(text)).toBe(words));

  test('a number stays with its unit and its groups of digits', () => {
    expect(writtenTokens('It is 12 000 km/h fast.').map(({ written }) => written)).toEqual([
      'It',
      'is',
      '12\u00a0000\u00a0km/h',
      'fast.',
    ]);
  });

  test('a decade is no number of seconds', () => {
    expect(said('In the 1960s, and for 1960 s.')).toBe(
      'In the nineteen sixties and for one thousand nine hundred and sixty seconds',
    );
  });

  test('nothing written gets lost, whatever it is', () => {
    for (const text of ['(100 bar)', '“3.5”', '1 200 and 3', '9'.repeat(40), '<v>1</v> --> 2', '٣ 四']) {
      const tokens = writtenTokens(text);
      expect(tokens.map(({ written }) => written.replace(/\u00a0/g, ' ')).join(' ')).toBe(text);
      expect(tokens.flatMap(({ said: words }) => words).every((word) => word !== '')).toBe(true);
    }
  });
});
