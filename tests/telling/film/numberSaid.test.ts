import { describe, expect, test } from 'vitest';
import { numberInWords } from '../../../src/answer/spoken/numberWords.ts';
import { numberSaid } from '../../../src/telling/film/numberSaid.ts';
import { spokenTokens } from '../../../src/telling/film/spokenTokens.ts';
import { saidWords } from '../../../src/telling/time/saidWords.ts';
import { randomFrom } from '../../campaigns/random.ts';

const wordsOf = (text: string): readonly string[] => saidWords(text).map((word) => word.toLowerCase());

describe('numbers out of spoken words', () => {
  test.each([
    ['a hundred and twenty-two point five bar', 122.5e5],
    ['122.5 bar', 122.5e5],
    ['one hundred twenty bar', 120e5],
    ['twelve thousand kilometres', 12e6],
    ['two hundred and fifty thousand', 250_000],
    ['one point two million pascals', 1.2e6],
    ['nineteen fifty-seven', 1957],
    ['two thousand and five', 2005],
    ['minus twenty degrees Celsius', 253.15],
    ['thirty per cent', 0.3],
    ['zero point zero five metres', 0.05],
    ['five times ten to the minus three', 0.005],
    ['a thousand and one metres per second', 1001],
  ])('%s', (text, value) => {
    const words = wordsOf(text);
    const number = numberSaid(words, 0);
    expect(number?.value).toBeCloseTo(value, 9);
    expect(number?.length).toBe(words.length);
  });

  test.each(['bar', 'a bar', 'and', 'hundred', 'point five', 'thousands'])('none in “%s”', (text) =>
    expect(numberSaid(wordsOf(text), 0)).toBeNull(),
  );

  test('every number put into words is read back', () => {
    const random = randomFrom(7);
    for (let i = 0; i < 2000; i++) {
      const value = Number(
        (10 ** random.between(-2.9, 11)).toPrecision(1 + Math.floor(random.between(0, 6))),
      );
      const { words } = numberInWords(value, 6);
      const list = wordsOf(words);
      const read = numberSaid(list, 0);
      expect(read!.value / value, words).toBeCloseTo(1, 12);
      expect(read?.length, words).toBe(list.length);
    }
  });

  test('“a” is a number only before a hundred; two numbers beside each other stay two', () => {
    const keys = (text: string) => spokenTokens(text).map(({ key }) => key);
    expect(keys('a bell of a hundred parts')).toEqual(['a', 'bell', 'of', '#', 'parts']);
    expect(
      spokenTokens('between three and five seconds').flatMap(({ number }) => number?.value ?? []),
    ).toEqual([3, 5]);
    expect(spokenTokens('three, four, five').flatMap(({ number }) => number?.value ?? [])).toEqual([3, 4, 5]);
  });
});

test('a ton is no tonne: in America it has 907 kg', () => {
  const said = (text: string) => spokenTokens(text).find(({ number }) => number !== null)?.number;
  expect(said('two hundred tonnes')?.value).toBeCloseTo(200_000, 6);
  expect(said('two hundred tons')?.value).toBe(200);
});
