import { writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { runCutCampaign } from './runCutCampaign.ts';

/** `npm run campaign -- cut`: 10 000 random scripts cut; writes its report beside this file. */
const CASES = Number(process.env.PLUMELINE_CUTS ?? 10_000);

test('random scripts cut, small ones held against every set of their lines', { timeout: 3_600_000 }, () => {
  const report = runCutCampaign(0, CASES);
  writeFileSync(new URL('cut-campaign.json', import.meta.url), `${JSON.stringify(report, null, 2)}\n`);
  console.log(report);
  expect(report.failures).toEqual([]);
  expect(report.unsettled).toBe(0);
});
