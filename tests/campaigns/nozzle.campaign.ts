import { writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { campaignGases } from './campaignGases.ts';
import { PHYSICAL_REASONS } from './nozzleCases.ts';
import { runNozzleCampaign } from './runNozzleCampaign.ts';

/** `npm run campaign`: 5 000 random nozzles of every family, some minutes; writes its report beside this file. */
const CASES = Number(process.env.PLUMELINE_NOZZLES ?? 5000);
/** [ms] of processor time that no nozzle may take. */
const LONGEST = 2000;

test('random nozzles of every family over the whole range', { timeout: 3_600_000 }, () => {
  const spent = (): number => {
    const { user, system } = process.cpuUsage();
    return (user + system) / 1000;
  };
  let last = spent();
  let slowest = { milliseconds: 0, seed: -1 };
  const report = runNozzleCampaign(0, CASES, campaignGases(), (seed) => {
    const now = spent();
    // The first case pays for the program's own warming up.
    if (seed > 0 && now - last > slowest.milliseconds) slowest = { milliseconds: now - last, seed };
    last = now;
  });
  const share = report.solved / report.inside;
  const file = new URL('nozzle-campaign.json', import.meta.url);
  const record = { ...report, shareSolvedInside: share, slowest, reasons: PHYSICAL_REASONS };
  writeFileSync(file, `${JSON.stringify(record, null, 2)}\n`);
  console.log(record);
  expect(share).toBeGreaterThanOrEqual(0.97);
  expect(slowest.milliseconds).toBeLessThan(LONGEST);
});
