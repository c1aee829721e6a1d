import { describe, expect, test } from 'vitest';
import { countWords, untestedReasons, verdictLabel } from '../../../src/answer/sentences/index.ts';
import { reasonIn } from '../../../src/answer/sentences/saidReasons.ts';
import { checkOne } from './closedForms.ts';

describe('a reason is found in the words', () => {
  test.each([
    ['It gains ten seconds, because it expands further.', 'because it expands further'],
    ['Because the gas is hotter, it leaves faster.', 'Because the gas is hotter'],
    ['The plug gains more, for it expands the gas further.', 'for it expands the gas further'],
    ['A plug is better, since it adapts to every altitude.', 'since it adapts to every altitude'],
    ['It gains more – owing to its lighter exhaust – in vacuum.', 'owing to its lighter exhaust – in vacuum'],
  ])('%s', (say, reason) => {
    expect(reasonIn(say)?.reason).toBe(reason);
  });

  test.each([
    'Because its molecules are some six times lighter.',
    'That is because the gas has left the wall.',
    'It has flown since 1972.',
    'For the same thrust it is smaller.',
    'It gains a seventh, for the pad at least.',
    'The nozzle is made for 12 km.',
  ])('and none in: %s', (say) => {
    expect(reasonIn(say)).toBeNull();
  });
});

const same = (): number => 1e5;
const hotter = { say: 'It gives more, because it burns hotter.' };

describe('a reason', () => {
  test('that no part of the test looks at is told so beside a green verdict, which stays', async () => {
    const found = await checkOne({ ...hotter, holds: 'a.thrust(vacuum) > 1 N' }, same);
    expect(found.verdict).toBe('safe to say');
    expect(found.saidReasons).toMatchObject([{ text: 'because it burns hotter', tested: false }]);
    expect(untestedReasons(found)).toEqual([
      expect.stringMatching(/^The reason is not tested: “because it burns hotter”/),
    ]);
  });

  test('is tested where its own quantity is asked for, or, where it names none, by a part of its own', async () => {
    const legs = 'a.thrust(vacuum) > 1 N and a.chamber.temperature > 1 K';
    const found = await checkOne({ ...hotter, holds: legs }, same);
    expect(found.saidReasons).toMatchObject([{ tested: true }]);
    expect(untestedReasons(found)).toEqual([]);
    const other = await checkOne(
      { ...hotter, holds: 'a.thrust(vacuum) > 1 N and a.massFlow > 1 kg/s' },
      same,
    );
    expect(other.saidReasons).toMatchObject([{ tested: false }]);
    const vague = { say: 'It gives more, because it adapts.' };
    const between = await checkOne({ ...vague, holds: 'a.thrust(vacuum) is between 1 N and 1 MN' }, same);
    expect(between.saidReasons).toMatchObject([{ tested: false }]);
    const two = await checkOne({ ...vague, holds: 'a.thrust(vacuum) > 1 N and a.areaRatio > 1' }, same);
    expect(two.saidReasons).toMatchObject([{ tested: true }]);
  });

  test('of a sentence that is not to be said anyway needs no note', async () => {
    const found = await checkOne({ ...hotter, holds: 'a.thrust(vacuum) < 1 N' }, same);
    expect(found.verdict).toBe('don’t say');
    expect(untestedReasons(found)).toEqual([]);
  });
});

test('a test that cannot be read is told in words of its own, and counted by itself', async () => {
  const unread = await checkOne({ holds: 'a.thrust(vacuum' }, same);
  const open = { verdict: 'can’t tell', problem: null } as const;
  expect(verdictLabel(unread)).toBe('test cannot be read');
  expect(verdictLabel(open)).toBe('can’t tell');
  expect(countWords([unread, open, open])).toBe('2 can’t tell, 1 test cannot be read');
});
