import { expect, test } from 'vitest';
import type { CheckedAnalogy } from '../../../src/answer/analogies/model.ts';
import { besideInputs, stillJudged } from '../../../src/faces/workbench/state/judgedAnalogies.ts';
import type { AnalogyInput } from '../../../src/study/model.ts';

const input = (id: string, say: string): AnalogyInput => ({
  id,
  say,
  said: true,
  stands: [],
  legs: [],
  holdsFor: '',
  breaksWhere: [],
  sources: [],
  path: id,
});
const checked = (id: string): CheckedAnalogy => ({ id, verdict: 'say with care' }) as CheckedAnalogy;

test('a verdict stays with its analogy until that changes', () => {
  const judged = besideInputs(
    [checked('hose'), checked('door')],
    [input('hose', 'Like a hose.'), input('door', 'Like a door.')],
  );
  expect([
    ...stillJudged(judged, [input('hose', 'Like a hose.'), input('door', 'Like a gate.')]).keys(),
  ]).toEqual(['hose']);
});
