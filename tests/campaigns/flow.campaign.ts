import { writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { runFlowCase } from './flowCases.ts';

/** `npm run campaign -- flow.campaign`: random engines and ambients run to their end; writes its report beside this file. */
const CASES = Number(process.env.PLUMELINE_FLOWS ?? 500);

test('random engines in random air run to their end without a pressure below nothing', {
  timeout: 7_200_000,
}, () => {
  const cases = Array.from({ length: CASES }, (_, seed) => runFlowCase(seed));
  const asked = cases.filter(({ ended }) => ended !== null);
  const failed = asked.filter(({ ended }) => ended === false);
  const record = {
    cases: CASES,
    asked: asked.length,
    ended: asked.length - failed.length,
    broke: asked.filter(({ broke }) => broke > 0).length,
    failed,
  };
  writeFileSync(new URL('flow-campaign.json', import.meta.url), `${JSON.stringify(record, null, 2)}\n`);
  console.log(record);
  expect(record.ended / record.asked).toBeGreaterThanOrEqual(0.97);
});
