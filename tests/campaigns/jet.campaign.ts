import { writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { type DiskFound, diskOfOrifice } from '../physics/wholeFlow/orifice.ts';

/** `npm run campaign -- jet`: the first Mach disk over pressure ratios 15 to 100; writes what it found beside this file. */
test('the Mach disk of a sonic orifice within 8 % of the published law', { timeout: 3_600_000 }, () => {
  const found: (DiskFound & { readonly gamma: number; readonly off: number })[] = [];
  for (const gamma of [1.4, 1.2]) {
    for (const ratio of [15, 20, 30, 45, 70, 100]) {
      const disk = diskOfOrifice(ratio, gamma, [8, 16], [1600, 1600]);
      found.push({ ...disk, gamma, off: disk.found / disk.law - 1 });
    }
  }
  writeFileSync(new URL('jet-campaign.json', import.meta.url), `${JSON.stringify(found, null, 2)}\n`);
  console.table(found);
  for (const { off } of found) expect(Math.abs(off)).toBeLessThan(0.08);
});
