import { writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { openDataShelf } from '../../src/faces/disk/data.ts';
import { PHYSICAL_REASONS } from './gasCases.ts';
import { runGasCampaign } from './runGasCampaign.ts';

/** `npm run campaign`: 100 000 random chambers and expansions, a few minutes; writes its report beside this file. */
const CASES = Number(process.env.PLUMELINE_CASES ?? 100_000);

test('random chambers and expansions over the whole range', { timeout: 3_600_000 }, async () => {
  const shelf = openDataShelf();
  const report = runGasCampaign(0, CASES, {
    species: await shelf.species(['H', 'C', 'N', 'O', 'Al', 'Cl', 'F']),
    propellants: await shelf.propellants(),
  });
  const share = report.solved / report.inside;
  const file = new URL('gas-campaign.json', import.meta.url);
  const record = { ...report, shareSolvedInside: share, reasons: PHYSICAL_REASONS };
  writeFileSync(file, `${JSON.stringify(record, null, 2)}\n`);
  console.log(record);
  expect(share).toBeGreaterThanOrEqual(0.999);
});
