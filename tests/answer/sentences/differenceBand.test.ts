import { expect, test } from 'vitest';
import type { Point } from '../../../src/answer/asked/crew.ts';
import type { Ask, Told } from '../../../src/answer/asked/model.ts';
import { differenceBand } from '../../../src/answer/sentences/index.ts';
import { studyOf } from '../solveText.ts';
import { enginesWith, fakeCrew } from '../spread/fakeCrew.ts';
import { isOf, withAlternatives, z } from './closedForms.ts';

const study = await studyOf(enginesWith('3.5 ± 0.1', '100 bar', '100 bar'));
const band = (fake: (ask: Ask, point: Point) => number | Told) =>
  differenceBand(study, fakeCrew(fake), { base: 'a', other: 'b' }, { quantity: 'massFlow', ambient: null });

test('what both share cancels; the band is that of the difference', async () => {
  // Each moves by ± 20 kg/s (two standard deviations), the difference not at all.
  const shared = await band((ask, point) => (isOf(ask, 'a') ? 100 : 103) + 10 * z(point));
  expect(shared).toMatchObject({ tooClose: false });
  expect(shared!.value).toBeCloseTo(3, 9);
  expect(shared!.low).toBeCloseTo(3, 6);
  expect(shared!.high).toBeCloseTo(3, 6);
  // b alone moves: 3 ± 1.96 kg/s
  const own = await band((ask, point) => (isOf(ask, 'a') ? 100 : 103 + z(point)));
  expect(own!.low).toBeCloseTo(1.04, 0);
  expect(own!.high).toBeCloseTo(4.96, 0);
  expect(own!.words.replaceAll('\u00a0', ' ')).toBe('between 1 and 5 kg/s more');
});

test('too close to call where the sign is open, on both sides of the line', async () => {
  // 2.2 ± 1.96 is sure; 1.7 ± 1.96 is not.
  expect(await band((ask, point) => (isOf(ask, 'a') ? 100 : 102.2 + z(point)))).toMatchObject({
    tooClose: false,
  });
  const open = await band((ask, point) => (isOf(ask, 'a') ? 100 : 101.7 + z(point)));
  expect(open).toMatchObject({ tooClose: true });
  expect(open!.words).toMatch(/^too close to call \(from .* less to .* more\)$/);
});

test('what rounding leaves of two equal numbers is no difference', async () => {
  // 1e-13 of the number, above and below: that of a sum in another order.
  const same = await band((ask, point) => (isOf(ask, 'a') ? 100 : 100 + 1e-11 * (1 + z(point))));
  expect(same).toMatchObject({ value: 0, low: 0, high: 0, tooClose: true, words: 'the same' });
  // A millionth of it is one, and told.
  const small = await band((ask) => (isOf(ask, 'a') ? 100 : 100.0001));
  expect(small!.words).toMatch(/more$/);
});

test('models that stand beside each other widen it; an absent number has none', async () => {
  const wide = await band((ask) =>
    isOf(ask, 'a') ? 100 : withAlternatives(103, { Stark: 99, Schmucker: 103 }),
  );
  expect(wide!.tooClose).toBe(true);
  expect(wide!.low).toBeCloseTo(-1, 9);
  expect(wide!.high).toBeCloseTo(3, 9);
  const problem = { code: 'none', what: 'No flow.', mend: 'Raise it.' };
  expect(await band((ask) => (isOf(ask, 'a') ? 100 : { ok: false, problem }))).toBeNull();
});
