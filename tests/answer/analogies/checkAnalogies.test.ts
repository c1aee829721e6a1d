import { describe, expect, test } from 'vitest';
import { type CheckedAnalogy, checkAnalogies } from '../../../src/answer/analogies/index.ts';
import type { Told } from '../../../src/answer/asked/model.ts';
import { failsAsSaid } from '../../../src/answer/sentences/index.ts';
import { studyOf } from '../solveText.ts';
import { enginesWith, type Fake, fakeCrew, PRESSURE } from '../spread/fakeCrew.ts';

/** Mass flow as a power of the chamber pressure, in closed form; everything else is 2. */
const power =
  (exponent: number): Fake =>
  ({ engine, quantity }, point) =>
    engine === 'a' && quantity === 'massFlow' ? 10 * ((point[PRESSURE] ?? 100e5) / 100e5) ** exponent : 2;

async function check(legs: string, fake: Fake, more = ''): Promise<CheckedAnalogy> {
  const study = await studyOf(
    enginesWith('3.5', '100 bar', '100 bar'),
    `analogies:
  - id: hose
    say: It is like a hose.
    stands: [{ this: the tap, for: the chamber, relation: chamber.pressure }]
    legs:
${legs}
    holdsFor: slow flow.
    breaksWhere: [in fast flow${more}]`,
  );
  const [found] = await checkAnalogies(study, fakeCrew(fake));
  return found!;
}

const leg = (goes: string, main = true): string =>
  `      - { say: More pressure moves more., main: ${main}, as: { of: a.massFlow, over: chamber.pressure, from: 50 bar, to: 200 bar, goes: ${goes} } }`;
const tests = (holds: string, main = true): string =>
  `      - { say: So it is., main: ${main}, holds: ${holds} }`;

describe('how a quantity goes with an input', () => {
  // y ∝ pⁿ in closed form: what is so, and what is not.
  test.each([
    [1, 'up', 'safe to say'],
    [1, 'down', 'don’t say'],
    [-1, 'down', 'safe to say'],
    [1, 'in proportion', 'safe to say'],
    [1, 'like the square', 'don’t say'],
    [2, 'like the square', 'safe to say'],
    [2, 'in proportion', 'don’t say'],
    [-1, 'in inverse proportion', 'safe to say'],
    [0.5, 'like the square root', 'safe to say'],
    [0, 'unchanged', 'safe to say'],
    [0, 'up', 'don’t say'],
    [0.05, 'unchanged', 'don’t say'],
    [0.05, 'unchanged within 5 %', 'safe to say'],
  ])('to the power %s is %s: %s', async (exponent, goes, verdict) => {
    const found = await check(leg(goes), power(exponent));
    expect(found.verdict).toBe(verdict);
    expect(found.legs[0]!.problem).toBeNull();
    expect(found.legs[0]!.steepness?.whole).toBeCloseTo(exponent, 6);
    expect(found.legs[0]!.relations[0]?.quantity).toBe('massFlow');
    expect(found.legs[0]!.conditions.join(' ')).toMatch(/50 bar to 200 bar/);
  });

  test('a turn inside the range is partly right: said with care', async () => {
    const turned: Fake = (_, point) => 5 - ((point[PRESSURE] ?? 100e5) / 100e5 - 1.2) ** 2;
    const found = await check(leg('up'), turned);
    expect(found).toMatchObject({ verdict: 'say with care', legs: [{ verdict: 'partly right' }] });
    expect(found.why).toContain('in a part of the range only');
  });

  test('no value anywhere: can’t tell', async () => {
    const none: Told = { ok: false, problem: { code: 'x', what: 'It cannot run.', mend: '' } };
    const found = await check(leg('up'), () => none);
    expect(found).toMatchObject({ verdict: 'can’t tell', wording: null });
    expect(failsAsSaid(found)).toBe(true);
  });

  test.each([
    [leg('up').replace('chamber.pressure', 'chamber.presure'), /presure/],
    [leg('up').replace('a.massFlow', 'a.masFlow'), /masFlow/],
    [leg('up').replace('50 bar', '50 kg'), /kg/],
    [tests('a.massFlow > 3 bar'), /mass flow.*pressure/],
  ])('what cannot be read is told with its place: %s', async (legs, what) => {
    const found = await check(legs, power(1));
    expect(found.verdict).toBe('can’t tell');
    expect(found.problem?.what).toMatch(what);
    expect(found.problem?.where).toMatch(/^analogies\.hose\.legs\[0\]\.(as|holds)$/);
  });
});

describe('the verdict of an analogy', () => {
  test('a test as leg, on both sides', async () => {
    expect(await check(tests('a.massFlow > 9 kg/s'), power(1))).toMatchObject({
      verdict: 'safe to say',
      legs: [{ verdict: 'right', share: 1 }],
    });
    expect(await check(tests('a.massFlow > 11 kg/s'), power(1))).toMatchObject({
      verdict: 'don’t say',
      wording: null,
      legs: [{ verdict: 'wrong', share: 0 }],
    });
  });

  test('a wrong leg beside the main one: with care, and told', async () => {
    const found = await check(`${leg('up')}\n${tests('a.massFlow > 11 kg/s', false)}`, power(1));
    expect(found.verdict).toBe('say with care');
    expect(found.wording).toContain(
      'It holds for slow flow. It breaks: in fast flow. Not so in an engine: “So it is.”',
    );
    expect(failsAsSaid(found)).toBe(false);
  });

  test('a leg without a test: with care; none at all: not checked', async () => {
    const bare = '      - { say: It feels alike. }';
    expect((await check(`${leg('up')}\n${bare}`, power(1))).verdict).toBe('say with care');
    expect((await check(bare, power(1))).verdict).toBe('not checked');
  });

  test('where it breaks is told of this study', async () => {
    const breaks = (flow: string): string => `, { say: above ${flow}, when: a.massFlow > ${flow} }`;
    const here = await check(leg('up'), power(1), breaks('9 kg/s'));
    expect(here).toMatchObject({ verdict: 'say with care', breaksWhere: [{ here: null }, { here: true }] });
    const not = await check(leg('up'), power(1), breaks('11 kg/s'));
    expect(not).toMatchObject({ verdict: 'safe to say', breaksWhere: [{ here: null }, { here: false }] });
  });

  test('a relation that is none is told', async () => {
    const study = await studyOf(
      enginesWith('3.5', '100 bar', '100 bar'),
      `analogies: [{ id: x, say: So., stands: [{ this: a, for: b, relation: chamber.presure }], legs: [{ say: c, holds: a.massFlow > 1 kg/s }], holdsFor: d, breaksWhere: [e] }]`,
    );
    const [found] = await checkAnalogies(study, fakeCrew(power(1)));
    expect(found).toMatchObject({
      verdict: 'can’t tell',
      problem: { code: 'quantity-unknown', where: 'analogies.x.stands[0].relation' },
    });
  });

  test('what it stands for carries equation and source', async () => {
    const found = await check(leg('up'), power(1));
    expect(found.stands[0]!.relation).toMatchObject({ quantity: 'chamber.pressure' });
    expect(found.stands[0]!.relation!.source).not.toBe('');
  });
});
