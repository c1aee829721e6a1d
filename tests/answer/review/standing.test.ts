import { describe, expect, test } from 'vitest';
import { type Reviewable, standingsOf, standingWords } from '../../../src/answer/review/index.ts';
import { type ReviewedState, type SignOff, stateText } from '../../../src/study/review/model.ts';

const state: ReviewedState = {
  say: 'It pushes harder in vacuum.',
  test: 'a.thrust(vacuum) > a.thrust(pad)',
  verdict: 'safe to say',
  rests: ['a.thrust(vacuum): about 350 kN'],
};
/** Stands for a digest: any function that tells texts apart. */
const digest = (text: string): string => `#${text}`;
const signed: SignOff = {
  id: 'push',
  by: 'A',
  date: '2026-11-26',
  hash: digest(stateText(state)),
  reviewed: state,
};
const now = (changes: Partial<ReviewedState>): readonly Reviewable[] => [
  { kind: 'sentence', id: 'push', state: { ...state, ...changes } },
];
const words = (items: readonly Reviewable[], signOff = signed): string =>
  standingWords(standingsOf([signOff], items, digest)[0]!);

describe('a sign-off', () => {
  test('stands while nothing of what was reviewed changes', () => {
    expect(words(now({}))).toBe('Reviewed by A on 2026-11-26.');
  });

  test.each([
    [{ say: 'It pushes more.' }, /void .*the words were “It pushes harder in vacuum\.”/],
    [{ test: null }, /void .*the test was a\.thrust/],
    [{ verdict: 'say with care' }, /void .*was “safe to say”, now “say with care”/],
    [{ rests: ['a.thrust(vacuum): about 360 kN'] }, /void .*no longer so: .*350 kN; now: .*360 kN/],
  ] as const)('is void after %j', (changes, told) => {
    expect(words(now(changes))).toMatch(told);
  });

  test('is void when the sentence is gone, or the record itself was edited', () => {
    expect(words([])).toMatch(/no longer in the study/);
    const edited = { ...signed, reviewed: { ...state, verdict: 'say with care' } };
    expect(words(now({ verdict: 'say with care' }), edited)).toMatch(/record .* itself edited/);
  });
});
