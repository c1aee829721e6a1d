import { expect, test } from 'vitest';
import { withDrawnBands } from '../../../src/answer/bands/drawnBands.ts';
import { isOf, z } from '../sentences/closedForms.ts';
import { solveText, studyOf } from '../solveText.ts';
import { enginesWith, fakeCrew } from '../spread/fakeCrew.ts';

const engines = enginesWith('3.5 ± 0.1', '100 bar', '100 bar');

/** The row of the comparison, where b has so much [SI] more than a in each draw. */
async function rowWith(more: (z: number) => number) {
  const answer = await withDrawnBands(
    await studyOf(engines),
    await solveText(engines),
    fakeCrew((ask, point) => 100 + z(point) + (isOf(ask, 'a') ? 0 : more(z(point)))),
  );
  return answer.comparison!.quantities.find(({ quantity }) => quantity === 'massFlow')!;
}

test('what rounding leaves of a difference is no spread: the two are the same', async () => {
  const row = await rowWith((draw) => 1e-10 * draw);
  expect(row.words).toBe('the same');
  expect(row.band).toBeUndefined();
});

test('a difference whose sign is open is too close to call', async () => {
  const row = await rowWith((draw) => draw);
  expect(row.words).toMatch(/^too close to call \(from .* less to .* more\)$/);
});
