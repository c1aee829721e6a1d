import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { courseOf } from '../../src/study/courseWords.ts';
import { readStudy } from '../../src/study/read.ts';
import { goodStudy } from './badStudies.ts';

const FACTS = `facts:
  - id: first-run
    say: The Alder bell first ran for 162 seconds.
    value: 162 s
    at: on the stand
    sources: [book]
    disagree:
      values: [{ value: 162 s, source: book }, { value: 160 s, source: book }]
      chosen: 2
      because: the second was measured
`;
const ANALOGIES = `analogies:
  - id: hose
    say: It is like a garden hose with a thumb over its end.
    said: false
    stands: [{ this: the thumb, for: the throat, relation: throat.area }, { this: the tap, for: the pump }]
    legs:
      - { say: More pressure pushes more through., as: { of: bell.massFlow, over: engines.bell.chamber.pressure, from: 50 bar, to: 200 bar, goes: in proportion ± 0.05 } }
      - { say: It only gets slower behind., main: true, holds: bell.exit.velocity < bell.throat.velocity }
    holdsFor: slow flow
    breaksWhere: [in fast flow, { say: behind the throat, when: bell.exit.mach > 1 }]
    sources: [book]
`;

const read = (extra: string) => readStudy(goodStudy + extra);
const told = (extra: string): readonly string[] => {
  const outcome = read(extra);
  return (outcome.ok ? outcome.warnings : outcome.problems).map(({ code, path }) => `${code} ${path}`);
};

describe('reported facts', () => {
  test('are read whole', () => {
    const outcome = read(FACTS);
    expect(outcome.ok && outcome.study.facts).toMatchObject([
      {
        id: 'first-run',
        value: { value: 162, text: '162 s' },
        at: 'on the stand',
        sources: ['book'],
        disagree: { values: [{ source: 'book' }, { value: { value: 160 } }], chosen: 2 },
      },
    ]);
    expect(outcome.ok && outcome.warnings).toEqual([]);
  });

  test.each([
    ['a missing citation, warned of', /^ {4}sources: .*\n/m, '', 'citation-missing facts[0].sources'],
    ['an empty citation', 'sources: [book]', 'sources: []', 'citation-missing facts[0].sources'],
    ['a source that is none', 'sources: [book]', 'sources: [bok]', 'citation-unknown facts[0].sources[0]'],
    ['one value alone', ', { value: 160 s, source: book }', '', 'disagree-not-two facts[0].disagree.values'],
    ['a third choice', 'chosen: 2', 'chosen: 3', 'chosen-unreadable facts[0].disagree.chosen'],
    ['no reason', /^ {6}because.*\n/m, '', 'key-missing facts[0].disagree.because'],
    ['a unit that is none', 'value: 162 s\n', 'value: 162 sx\n', 'unit-unknown facts[0].value'],
    ['a key that is none', '    at: ', '    when: ', 'key-unknown facts[0].when'],
  ])('tell of %s', (_, from, to, expected) => {
    const changed = FACTS.replace(from, to);
    expect(changed).not.toBe(FACTS);
    expect(told(changed)).toEqual([expected]);
  });

  test('have ids of their own', () => {
    expect(told(`${FACTS}  - { id: first-run, say: Again., sources: [book] }\n`)).toEqual([
      'id-twice facts[1].id',
    ]);
  });
});

describe('analogies', () => {
  test('are read whole', () => {
    const outcome = read(ANALOGIES);
    expect(outcome.ok && outcome.study.analogies).toMatchObject([
      {
        id: 'hose',
        said: false,
        stands: [{ for: 'the throat', relation: 'throat.area' }, { relation: null }],
        legs: [
          { main: false, as: { goes: { is: 'power', exponent: 1, tolerance: 0.05 }, from: '50 bar' } },
          { main: true, holds: 'bell.exit.velocity < bell.throat.velocity', as: null },
        ],
        breaksWhere: [{ say: 'in fast flow', when: null }, { when: 'bell.exit.mach > 1' }],
        sources: ['book'],
      },
    ]);
  });

  test('the first leg is the main one where none is marked', () => {
    const outcome = read(ANALOGIES.replace(' main: true,', ''));
    expect(outcome.ok && outcome.study.analogies[0]?.legs.map(({ main }) => main)).toEqual([true, false]);
  });

  test.each([
    [
      'a course that is none',
      'goes: in proportion ± 0.05',
      'goes: sideways',
      'course-unreadable analogies[0].legs[0].as.goes',
    ],
    [
      'two main legs',
      '- { say: More pressure pushes more through.,',
      '- { say: More., main: true,',
      'main-twice analogies[0].legs[1]',
    ],
    [
      'a leg tested twice',
      'main: true,',
      'as: { of: bell.massFlow, over: altitude, goes: up },',
      'leg-two-ways analogies[0].legs[1].as',
    ],
    ['nothing that stands for anything', /stands: .*/, 'stands: []', 'list-empty analogies[0].stands'],
    ['no word on where it holds', /^ {4}holdsFor.*\n/m, '', 'key-missing analogies[0].holdsFor'],
    ['a source that is none', 'sources: [book]', 'sources: [bok]', 'source-unknown analogies[0].sources[0]'],
  ])('tell of %s', (_, from, to, expected) => {
    const changed = ANALOGIES.replace(from, to);
    expect(changed).not.toBe(ANALOGIES);
    expect(told(changed)).toEqual([expected]);
  });

  test('tell how a single place where it breaks is written', () => {
    const outcome = read(ANALOGIES.replace(/breaksWhere: .*/, 'breaksWhere: in fast flow'));
    expect(outcome.ok ? [] : outcome.problems.map(({ mend }) => mend)).toEqual([
      expect.stringContaining('breaksWhere: [gas is not water]'),
    ]);
  });
});

test.each([
  ['up', { is: 'up' }],
  ['unchanged', { is: 'unchanged', within: 0.01 }],
  ['unchanged within 2.5 %', { is: 'unchanged', within: 0.025 }],
  ['like the inverse square', { is: 'power', exponent: -2, tolerance: 0.1 }],
  ['like the power −0.8 ± 0.3', { is: 'power', exponent: -0.8, tolerance: 0.3 }],
])('a course in words: %s', (text, expected) => {
  expect(courseOf(text)).toMatchObject({ ok: true, value: expected });
});

test('the examples in the reference are read', () => {
  const page = readFileSync(new URL('../../docs/study-file.md', import.meta.url), 'utf8');
  const parts = [...page.matchAll(/```yml\n([\s\S]*?)```/g)].map(([, part]) => part!);
  expect(parts.length).toBe(4);
  for (const part of parts) expect(read(part).ok).toBe(true);
});
