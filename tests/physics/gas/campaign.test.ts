import { beforeAll, describe, expect, test } from 'vitest';
import { openDataShelf } from '../../../src/faces/disk/data.ts';
import type { GasRows } from '../../campaigns/gasCases.ts';
import { type CampaignReport, runGasCampaign } from '../../campaigns/runGasCampaign.ts';

/** A slice of the long campaign (`npm run campaign`): laws that every random mixture must obey. */
const CASES = 2000;
let report: CampaignReport;

beforeAll(async () => {
  const shelf = openDataShelf();
  const rows: GasRows = {
    species: await shelf.species(['H', 'C', 'N', 'O', 'Al', 'Cl', 'F']),
    propellants: await shelf.propellants(),
  };
  report = runGasCampaign(500_000, CASES, rows);
});

describe('2 000 random chambers and expansions', () => {
  test('are all accounted for', () => {
    const counted = Object.values(report.counts).reduce((sum, n) => sum + n, 0);
    expect(counted).toBe(CASES);
    expect(report.inside).toBeGreaterThan(0.8 * CASES);
    expect(report.stations).toBeGreaterThan(2 * report.solved);
  });

  test('converge in at least 99.9 % of the cases inside the stated range; a law is never broken', () => {
    expect(report.failures.filter((words) => words.includes(': wrong '))).toEqual([]);
    expect(report.failures.length, report.failures.join('\n')).toBeLessThanOrEqual(0.001 * report.inside);
  });
});
