import { writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { coolingStock, PHYSICAL_REASONS, runCoolingCase } from './coolingCases.ts';

/** `npm run campaign -- heat`: 2 000 random cooled walls, under a minute; writes its report beside this file. */
const CASES = Number(process.env.PLUMELINE_COOLED ?? 2000);

test('random cooled walls', { timeout: 3_600_000 }, () => {
  const stock = coolingStock();
  const counts: Record<string, number> = {};
  const failures: string[] = [];
  for (let seed = 0; seed < CASES; seed++) {
    const { outcome, detail } = runCoolingCase(seed, stock);
    counts[outcome] = (counts[outcome] ?? 0) + 1;
    if (outcome !== 'solved' && !(outcome in PHYSICAL_REASONS)) {
      failures.push(`seed ${seed}: ${outcome}: ${detail.slice(0, 200)}`);
    }
  }
  const outside = Object.keys(PHYSICAL_REASONS).reduce((sum, code) => sum + (counts[code] ?? 0), 0);
  const share = (counts['solved'] ?? 0) / (CASES - outside);
  const record = {
    cases: CASES,
    counts,
    shareSolvedInside: share,
    shareSolved: (counts['solved'] ?? 0) / CASES,
    failures,
    reasons: PHYSICAL_REASONS,
  };
  writeFileSync(new URL('heat-campaign.json', import.meta.url), `${JSON.stringify(record, null, 2)}\n`);
  console.log(record);
  expect(share).toBeGreaterThanOrEqual(0.97);
});
