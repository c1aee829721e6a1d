import { expect, test } from 'vitest';
import { flipWords } from '../../../src/answer/sentences/flipWords.ts';

const ratio = 'engines.a.propellants.ratio';

test('both ends of the span of one input are one line', () => {
  const flips = [
    { input: ratio, value: 3.1, words: 'mixture ratio: turns false below about 3.1' },
    {
      input: 'engines.a.chamber.pressure',
      value: 8e6,
      words: 'chamber pressure: turns false below about 80 bar',
    },
    { input: ratio, value: 4, words: 'mixture ratio: turns false above about 4.0' },
  ];
  expect(flipWords(flips)).toEqual([
    'mixture ratio: turns false below about 3.1 and above about 4.0',
    'chamber pressure: turns false below about 80 bar',
  ]);
  expect(flipWords([])).toEqual([]);
});
