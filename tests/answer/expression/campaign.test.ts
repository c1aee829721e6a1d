import { expect, test } from 'vitest';
import { runExpressionCampaign } from '../../campaigns/runExpressionCampaign.ts';
import { alderScope } from './alderScope.ts';

/** A slice of the long campaign (`npm run campaign`): laws that every random text must obey. */
const CASES = 2000;

test('2 000 random texts are decided as JavaScript decides them, or refused with a reason and its place', () => {
  const report = runExpressionCampaign(1_000_000, CASES, alderScope);
  expect(report.failures.slice(0, 5)).toEqual([]);
  expect(report.decided + report.refused).toBe(CASES);
  // Whole tests are nearly all decided; of texts with slips some still are.
  expect(report.counts.whole.decided).toBeGreaterThan(0.9 * (CASES / 3));
  expect(report.counts.slips.decided).toBeGreaterThan(10);
  expect(Object.keys(report.counts.slips).length).toBeGreaterThan(10);
});
