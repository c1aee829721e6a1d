import { describe, expect, it } from 'vitest';
import { PHYSICAL_REASONS, runFlightCampaign } from '../../campaigns/runFlightCampaign.ts';

/** A short stretch of the long campaign, two seeds of it at which a flight once never ended, and two that need a bend below 0.3°. */
describe('random vehicles', () => {
  it.each([
    [1, 12],
    [99, 1],
    [478, 1],
    [641, 1],
    [1804, 1],
  ])('from seed %d, %d of them, end on their orbit or say why', (first, cases) => {
    const { counts, failures, largestRest } = runFlightCampaign(first, cases);
    expect(failures).toEqual([]);
    if (cases === 1) expect(counts).toEqual({ solved: 1 });
    expect(Object.keys(counts).every((code) => code === 'solved' || code in PHYSICAL_REASONS)).toBe(true);
    expect(largestRest).toBeLessThan(1e-6);
  });
});
