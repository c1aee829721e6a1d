import { describe, expect, test } from 'vitest';
import { absoluteWordsIn } from '../../../src/answer/sentences/absolutes.ts';
import { changedVerdicts, failsAsSaid } from '../../../src/answer/sentences/index.ts';
import { numbersInProse } from '../../../src/answer/sentences/numbersInWords.ts';
import { check, checkOne } from './closedForms.ts';

const still = { flips: false } as const;

describe('absolute words', () => {
  test.each([
    ['It always gains.', ['always']],
    ['It never lets go.', ['never']],
    ['The thrust rises the whole way.', ['the whole way']],
    ['In every case it is better.', ['In every case']],
    ['It is exactly the same.', ['exactly']],
    ['It is the only perfect one.', ['the only', 'perfect']],
    ['No nozzle can ever do that.', ['No nozzle can', 'ever']],
    ['It cannot happen anywhere.', ['cannot', 'anywhere']],
    ['That is impossible at all altitudes.', ['impossible', 'at all altitudes']],
    ['It gains nothing at all, zero.', ['nothing at all', 'zero']],
    ['It is not better at all.', []],
    ['After all, it gains some seconds.', []],
    ['However, it may fall; everyday talk.', []],
  ])('%s', (say, words) => {
    expect(absoluteWordsIn(say).map(({ word }) => word)).toEqual(words);
  });

  const rising = (ask: {
    readonly ambient: { readonly kind: string; readonly altitude?: number } | null;
  }): number => 1e5 + (ask.ambient?.altitude ?? 2e5);
  const say = 'The thrust always rises.';
  test('are covered by a test from the pad to vacuum, and flagged by any narrower one', async () => {
    const whole = await checkOne(
      { say, holds: 'a.thrust(z) rises for z from pad to vacuum' },
      rising,
      still,
      '3.5',
    );
    expect(whole).toMatchObject({ verdict: 'safe to say', absolutes: [{ word: 'always', covered: true }] });
    const every = await checkOne(
      { say: 'It is never below.', holds: 'for every p from 1.1 bar to 0 bar: a.thrust(p) > 1 N' },
      rising,
      still,
      '3.5',
    );
    expect(every).toMatchObject({ verdict: 'safe to say', absolutes: [{ covered: true }] });
    const part = await checkOne(
      { say, holds: 'a.thrust(z) rises for z from pad to 40 km' },
      rising,
      still,
      '3.5',
    );
    expect(part).toMatchObject({ verdict: 'say with care', absolutes: [{ word: 'always', covered: false }] });
    expect(part.why).toMatch(/“always” claims the whole range, but it is only tested at/);
    const single = await checkOne({ say, holds: 'a.thrust(5 km) > a.thrust(0 km)' }, rising, still, '3.5');
    expect(single.verdict).toBe('say with care');
    expect(single.why).toMatch(/for every z from pad to vacuum/);
    const some = await checkOne(
      { say, holds: 'for some z from pad to vacuum: a.thrust(z) > 1 N' },
      rising,
      still,
      '3.5',
    );
    expect(some.verdict).toBe('say with care');
  });

  test('“exactly” wants an equality within stated digits', async () => {
    const exact = { say: 'It is exactly 100 kg/s.' };
    const close = await checkOne(
      { ...exact, holds: 'a.massFlow is 100 kg/s within 0.2 %' },
      () => 100.1,
      still,
      '3.5',
    );
    expect(close.verdict).toBe('safe to say');
    const about = await checkOne(
      { ...exact, holds: 'a.massFlow is about 100 kg/s' },
      () => 100.1,
      still,
      '3.5',
    );
    expect(about.verdict).toBe('say with care');
    expect(about.absolutes[0]!.words).toMatch(/that is “about”/);
  });

  test('what does not hold stays don’t say', async () => {
    const found = await checkOne({ say, holds: 'a.massFlow > 200 kg/s' }, () => 100, still, '3.5');
    expect(found.verdict).toBe('don’t say');
  });
});

describe('numbers in the words', () => {
  test.each([
    ['It gains 12 % in vacuum.', [['12 %', 0.12]]],
    ['At five kilometres it is behind.', [['five kilometres', 5000]]],
    [
      'About 350 seconds, not 1 200 s.',
      [
        ['350 seconds', 350],
        ['1 200 s', 1200],
      ],
    ],
    [
      'It is twice as long, and a third heavier.',
      [
        ['twice', 2],
        ['a third', 1 / 3],
      ],
    ],
    ['A hundred and twenty bar in the chamber.', [['A hundred and twenty bar', 12e6]]],
    [
      'Three per cent more at 0.5 bar.',
      [
        ['Three per cent', 0.03],
        ['0.5 bar', 5e4],
      ],
    ],
    ['The exhaust leaves at 3.2 km/s.', [['3.2 km/s', 3200]]],
    ['One of them is longer.', []],
    ['The two engines of stage 1 are the same.', [['1', 1]]],
  ])('%s', (say, found) => {
    const numbers = numbersInProse(say);
    expect(numbers.map(({ text }) => text.replaceAll('\u00a0', ' '))).toEqual(found.map(([text]) => text));
    numbers.forEach(({ value }, i) => {
      expect(value).toBeCloseTo(found[i]![1] as number, 6);
    });
  });

  const eight = (ask: { readonly engine: string | null }): number => (ask.engine === 'a' ? 108 : 100);
  test.each([
    ['It passes 8 % more gas.', true, 'safe to say'],
    ['It passes 12 % more gas.', false, 'don’t say'],
    ['It always passes 12 % more gas.', false, 'don’t say'],
    ['It passes 108 kg/s.', true, 'safe to say'],
    ['It passes 100 s more.', null, 'safe to say'],
  ] as const)('%s', async (say, agrees, verdict) => {
    const found = await checkOne({ say, holds: 'a.massFlow > b.massFlow' }, eight, still, '3.5');
    expect(found.saidNumbers.map((one) => one.agrees)).toEqual([agrees]);
    expect(found.verdict).toBe(verdict);
    if (agrees === false) expect(found.why).toMatch(/says 12 %, but what is computed .* 8/);
  });

  test('the number of the test itself may be said', async () => {
    const found = await checkOne(
      { say: 'It passes more than 5 % more gas.', holds: 'a.massFlow is at least 5 % more than b.massFlow' },
      eight,
      still,
      '3.5',
    );
    expect(found.saidNumbers).toMatchObject([{ text: '5 %', agrees: true }]);
  });
});

test('what changed between two checks', async () => {
  const holds = 'a.massFlow > 100 kg/s';
  const before = await check([{ holds }, { holds: 'a.massFlow > 1 kg/s' }], () => 120, still, '3.5');
  const after = await check([{ holds }, { holds: 'a.massFlow > 1 kg/s' }], () => 90, still, '3.5');
  expect(changedVerdicts(before, after)).toMatchObject([
    {
      id: 's0',
      before: 'safe to say',
      after: 'don’t say',
      shareBefore: 1,
      shareAfter: 0,
      words: 's0: safe to say → don’t say',
    },
  ]);
  expect(changedVerdicts(before, before)).toEqual([]);
  expect(changedVerdicts(before.slice(0, 1), before.slice(1)).map(({ words }) => words)).toEqual([
    's1: new → safe to say',
    's0: safe to say → gone',
  ]);
});

test('only what is said can fail', async () => {
  const sentences = await check(
    [
      { holds: 'a.massFlow > 1 kg/s' },
      { holds: 'a.massFlow > 200 kg/s' },
      { holds: 'a.massFlow > 200 kg/s', said: false },
      { holds: 'a.massFlow > ' },
      {},
    ],
    () => 100,
    still,
    '3.5',
  );
  expect(sentences.map(failsAsSaid)).toEqual([false, true, false, true, false]);
});
