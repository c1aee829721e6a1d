import { expect, test } from 'vitest';
import { draftJudged } from '../../../src/faces/workbench/workshop/draftJudged.ts';
import { studyOf } from '../../answer/solveText.ts';
import { enginesWith, fakeCrew } from '../../answer/spread/fakeCrew.ts';

const judged = async (holds: string) => {
  const study = await studyOf(
    enginesWith('3.5 ± 0.1', '100 bar', '100 bar'),
    'sentences: [{ id: kept, say: It stays., holds: b.massFlow > 1 kg/s }]',
  );
  return draftJudged(
    study,
    fakeCrew(() => 100),
    ' It passes much, because it burns hotter. ',
    holds,
  );
};

test('a sentence that is written has a verdict before it is kept, marked provisional', async () => {
  const found = await judged('a.massFlow > 90 kg/s');
  if (!found.ok) throw new Error(found.problem.what);
  expect(found.value).toMatchObject({
    id: 'draft',
    say: 'It passes much, because it burns hotter.',
    verdict: 'safe to say',
    provisional: true,
    saidReasons: [{ tested: false }],
  });
  expect(await judged('a.massFlow < 90 kg/s')).toMatchObject({ value: { verdict: 'don’t say' } });
});

test.each(['', '   ', 'a.massFlow >', 'a.massFlow > 1 bar'])(
  'and none without a test that can be read: %j',
  async (holds) => {
    expect(await judged(holds)).toEqual({ ok: true, value: null });
  },
);
