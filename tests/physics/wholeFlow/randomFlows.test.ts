import { expect, test, vi } from 'vitest';
import { runFlowCase } from '../../campaigns/flowCases.ts';

// A field takes tenths of a second; on a busy machine seconds.
vi.setConfig({ testTimeout: 120_000 });

// The first of the 500 of `npm run campaign -- flow.campaign`; the seed stands in what failed.
test('random engines in random air run to their end: bells, cones, plugs, expansion–deflection nozzles', () => {
  const cases = Array.from({ length: 16 }, (_, seed) => runFlowCase(seed));
  expect(cases.filter(({ ended }) => ended !== true)).toEqual([]);
  for (const kind of ['bell', 'cone', 'annular plug', 'linear plug', 'expansionDeflection'])
    expect(cases.some(({ what }) => what.startsWith(kind))).toBe(true);
  // Some of them broke on the way, and went on in shorter steps at first order.
  expect(cases.some(({ broke }) => broke > 0)).toBe(true);
});
