import { describe, expect, test } from 'vitest';
import { campaignGases } from '../../campaigns/campaignGases.ts';
import { FAMILIES } from '../../campaigns/nozzleCases.ts';
import { runNozzleCampaign } from '../../campaigns/runNozzleCampaign.ts';

/** A slice of the long campaign (`npm run campaign`): laws that every random nozzle must obey. */
const CASES = 100;
const report = runNozzleCampaign(1_000_000, CASES, campaignGases());

describe('100 random nozzles', () => {
  test('are all accounted for, every family among them', () => {
    const counted = Object.values(report.counts).flatMap((family) => Object.values(family));
    expect(counted.reduce((sum, n) => sum + n, 0)).toBe(CASES);
    expect(Object.keys(report.counts).sort()).toEqual([...FAMILIES].sort());
    expect(report.inside).toBeGreaterThan(0.85 * CASES);
  });

  test('are solved in at least 97 % of the cases that nature allows', () => {
    expect(report.failures.length, report.failures.join('\n')).toBeLessThanOrEqual(0.03 * report.inside);
  });
});
