import { writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { alderScope } from '../answer/expression/alderScope.ts';
import { runExpressionCampaign } from './runExpressionCampaign.ts';

/** `npm run campaign`: 200 000 random tests of sentences, a minute or two; writes its report beside this file. */
const CASES = Number(process.env.PLUMELINE_EXPRESSIONS ?? 200_000);
/** [ms] of processor time that no text may take. */
const LONGEST = 500;

test('random tests of sentences: whole, with slips, and random signs', { timeout: 3_600_000 }, () => {
  const spent = (): number => {
    const { user, system } = process.cpuUsage();
    return (user + system) / 1000;
  };
  const begun = spent();
  let last = begun;
  let slowest = { milliseconds: 0, seed: -1 };
  const report = runExpressionCampaign(0, CASES, alderScope, (seed) => {
    const now = spent();
    // The first cases pay for the program's own warming up.
    if (seed > 100 && now - last > slowest.milliseconds) slowest = { milliseconds: now - last, seed };
    last = now;
  });
  const seconds = Number(((spent() - begun) / 1000).toFixed(1));
  const file = new URL('expression-campaign.json', import.meta.url);
  const record = { ...report, secondsOfProcessorTime: seconds, slowest };
  writeFileSync(file, `${JSON.stringify(record, null, 2)}\n`);
  console.log(record);
  expect(report.failures).toEqual([]);
  expect(slowest.milliseconds).toBeLessThan(LONGEST);
});
