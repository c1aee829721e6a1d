import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import { agreesWith, BOUNDS } from '../physics/euler/kernel/kernelBounds.ts';
import { box, burst, type CaseFields, differences } from '../physics/euler/kernel/kernelCases.ts';
import { launchChromium } from './chromium.ts';
import { pageScript } from './pageScript.ts';

let browser: Awaited<ReturnType<typeof launchChromium>>;
beforeAll(async () => {
  browser = await launchChromium();
}, 120_000);
afterEach(async () => {
  for (const context of browser.contexts()) await context.close();
});
afterAll(() => browser?.close());

test.each([64, 32] as const)(
  'in a page the kernel on floats of %i bits takes the steps of the reference in Node',
  async (bits) => {
    const page = await browser.newPage();
    await page.addScriptTag({
      content: await pageScript('../physics/euler/kernel/kernelCases.ts', 'flowCases'),
    });
    const run = (call: string) => page.evaluate(call) as Promise<CaseFields>;
    const burstThere = await run(`flowCases.burst(${bits}, 60, false)`);
    agreesWith(differences(burstThere, burst('reference', 60, false)), BOUNDS[bits].time);
    const there = await run(`flowCases.box(${bits}, 'tossed', 0.6, 8)`);
    const reference = box('reference', 'tossed', 0.6, 8);
    expect(there.rescued).toBe(reference.rescued);
    agreesWith(differences(there, reference), BOUNDS[bits].time);
    // The same instructions give the same numbers in Node, bit by bit, but for the logarithms that fill the table.
    agreesWith(differences(burstThere, burst(bits, 60, false)), BOUNDS[64].time);
  },
);
