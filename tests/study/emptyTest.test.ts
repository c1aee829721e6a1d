import { expect, test } from 'vitest';
import { readStudy } from '../../src/study/read.ts';
import { goodStudy } from './badStudies.ts';

const analogy = (leg: string, when: string): string => `analogies:
  - id: hose
    say: It is like a garden hose.
    stands: [{ this: the thumb, for: the throat }]
    legs: [{ say: It only gets slower behind., holds: ${leg} }]
    holdsFor: slow flow
    breaksWhere: [{ say: behind the throat, when: ${when} }]
`;

test.each(['""', "'  '", ''])('an empty test (%j) stops no study: told by id, with how to mend', (empty) => {
  const text = goodStudy.replace(
    /^sentences:$/m,
    `sentences:\n  - id: open\n    say: So it is.\n    holds: ${empty}`,
  );
  expect(text).not.toBe(goodStudy);
  const outcome = readStudy(text);
  if (!outcome.ok) throw new Error(outcome.problems.map(({ what }) => what).join('\n'));
  expect(outcome.study.sentences[0]).toMatchObject({ id: 'open', holds: null });
  expect(outcome.warnings).toMatchObject([
    {
      code: 'test-empty',
      path: 'sentences.open.holds',
      what: 'The sentence “open” has an empty test, so it is not checked.',
      mend: expect.stringContaining('take the line out'),
    },
  ]);
});

test('so in a leg of an analogy, and where it breaks', () => {
  const outcome = readStudy(goodStudy + analogy('""', '""'));
  if (!outcome.ok) throw new Error(outcome.problems.map(({ what }) => what).join('\n'));
  expect(outcome.warnings.map(({ code, what }) => [code, what])).toEqual([
    ['test-empty', 'The leg “It only gets slower behind.” has an empty test, so it is not checked.'],
    ['test-empty', '“behind the throat” has an empty test, so it is not checked.'],
  ]);
});
