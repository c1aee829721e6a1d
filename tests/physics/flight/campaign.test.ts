import { describe, expect, it } from 'vitest';
import { PHYSICAL_REASONS, runFlightCampaign } from '../../campaigns/runFlightCampaign.ts';

/** A short stretch of the long campaign, and the two seeds of it at which a flight once never ended. */
describe('random vehicles', () => {
  it.each([
    [1, 12],
    [99, 1],
    [478, 1],
  ])('from seed %d, %d of them, end on their orbit or say why', (first, cases) => {
    const { counts, failures, largestRest } = runFlightCampaign(first, cases);
    expect(failures).toEqual([]);
    expect(Object.keys(counts).every((code) => code === 'solved' || code in PHYSICAL_REASONS)).toBe(true);
    expect(largestRest).toBeLessThan(1e-6);
  });
});
