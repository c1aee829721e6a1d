/** The live answer: one number over the whole screen. */

import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import {
  axeFindings,
  keepSentences,
  onDisk,
  open,
  page,
  patient,
  pictures,
  server,
  slider,
  textOf,
  useWorkbench,
  withoutSentences,
} from './studyPage.ts';

useWorkbench();

const shown = () => textOf(page.locator('.live-number b'));
/** The one that Enter takes. */
const marked = (name: RegExp) => page.locator('.find').getByRole('option', { name, selected: true });
const goTo = async (hash: string) => {
  await page.goto(server.url + hash);
  await page.locator('.live-number b').waitFor();
};

describe('the live answer', () => {
  it('is a few keys away from the find box, follows the scale, and alters nothing', async () => {
    await withoutSentences();
    await open();
    const original = await onDisk();
    await page.keyboard.press('/');
    await page.keyboard.type('thrust vacuum alder b');
    await marked(/^Alder B, thrust in vacuum.*kN$/).waitFor();
    await page.keyboard.press('Shift+Enter');
    // The study states the bell's thrust in vacuum: 800 kN.
    await expect.poll(shown).toMatch(/^800(\.0)?.kN$/);
    await expect.poll(() => textOf(page.locator('.live-what'))).toContain('Alder\u00a0B');
    await slider().focus();
    await page.keyboard.press('Home');
    await expect.poll(shown).toMatch(/^6\d\d(\.\d)?.kN$/);
    await page.getByLabel('Input to try').selectOption('engines.bell.chamber.pressure');
    const before = await shown();
    await page.getByLabel(/chamber pressure, tried value/).fill('130 bar');
    await page.keyboard.press('Enter');
    await expect.poll(() => textOf(page.locator('.live-tried'))).toMatch(/chamber pressure: 130 bar$/);
    await expect.poll(shown, patient).not.toBe(before);
    await expect.poll(shown).toMatch(/^\d+(\.\d)?.kN$/);
    await expect.poll(() => onDisk()).toBe(original);
    await expect.poll(() => axeFindings('live')).toEqual([]);
    await page.getByRole('button', { name: 'Back' }).click();
    const field = page.locator('input[id="field-engines.bell.chamber.pressure"]');
    await expect.poll(() => field.inputValue()).toBe('100 bar');
    await expect.poll(() => onDisk()).toBe(original);
  });

  it('tells a difference with its ±, from the address alone, on a clear ground for a stream', async () => {
    await withoutSentences();
    await open();
    await goTo('#live=specificImpulse&of=plug&against=bell&at=vacuum&overlay');
    await page.locator('.live-number span', { hasText: '±' }).waitFor();
    // As the study's own sentence has it, the plug gains a few per cent in vacuum.
    await expect.poll(() => shown()).toMatch(/^\+[3-7](\.\d)?.%$/);
    await expect.poll(() => textOf(page.locator('.live-sure'))).toMatch(/between \+\d/);
    await expect
      .poll(() => page.evaluate(() => getComputedStyle(document.body).backgroundColor))
      .toBe('rgba(0, 0, 0, 0)');
    // The same in words, judged: the range of the difference lies above nothing.
    await expect
      .poll(() => textOf(page.locator('.live-said')), patient)
      .toMatch(/^Safe to say: “The specific impulse of Alder P in vacuum is higher than that of Alder B\.”/);
    await page.keyboard.press('Escape');
    await page.locator('table.ledger').waitFor();
  });

  it('tells the verdict of a sentence, found by its words, with what is true instead', async () => {
    await keepSentences('vacuum-gain', 'always-better');
    await open();
    const original = await onDisk();
    await page.keyboard.press('Control+k');
    await page.keyboard.type('always better');
    await marked(/^A plug is always better/).waitFor();
    await page.keyboard.press('Shift+Enter');
    await expect.poll(() => textOf(page.locator('.live-what'))).toMatch(/^“A plug is always better/);
    await expect.poll(shown, patient).toBe('don’t say');
    await expect.poll(() => textOf(page.locator('.live-sure'))).toMatch(/Instead: /);
    await expect.poll(() => axeFindings('live sentence')).toEqual([]);
    await page.goto(`${server.url}#live=&sentence=nothing-of-the-kind`);
    await expect.poll(() => textOf(page.locator('.live-what'))).toContain('does not have');
    expect(await onDisk()).toBe(original);
  });

  it('says so where the address asks for what is not there, and keeps its caution in sight on a low window', async () => {
    await withoutSentences();
    await open();
    await goTo('#live=specificImpulse&of=nobody');
    await expect.poll(() => textOf(page.locator('.live-what'))).toContain('does not have');
    // 200 % of 1440 by 900: the caution is on the first screen, whole, above the tools.
    await page.setViewportSize({ width: 720, height: 450 });
    await goTo('#live=specificImpulse&of=plug&against=bell&at=vacuum');
    const foot = page.locator('.live-foot');
    await expect.poll(() => textOf(foot)).toContain('not for building or firing hardware');
    await page.locator('.live-number span', { hasText: '±' }).waitFor();
    await expect.poll(async () => (await foot.boundingBox())!.y).toBeGreaterThan(225);
    const roomBelow = async () => {
      const [box, tools] = [await foot.boundingBox(), await page.locator('.live-tools').boundingBox()];
      return tools!.y - box!.y - box!.height;
    };
    await expect.poll(roomBelow).toBeGreaterThanOrEqual(-1);
    // So is all that is said of the number, once it is judged: none of it lies under the foot.
    await page.locator('.live-said b').waitFor();
    const edgeOf = (selector: string, edge: 'top' | 'bottom') =>
      page.locator(selector).evaluate((element, side) => element.getBoundingClientRect()[side], edge);
    await expect
      .poll(async () => (await edgeOf('.live-said', 'bottom')) - (await edgeOf('.live-foot', 'top')))
      .toBeLessThanOrEqual(0);
    await expect.poll(() => page.evaluate(() => scrollY)).toBe(0);
    await page.screenshot({ path: join(pictures, 'live-720-low.png') });
  });

  it.each([
    { width: 1920, height: 1080, dark: false },
    { width: 390, height: 844, dark: true },
  ])('fits the screen (%o)', async (looks) => {
    await withoutSentences();
    await open(looks);
    await goTo('#live=exitPressure&of=bell&at=10km');
    await expect.poll(shown).toMatch(/bar$/);
    // With all its words.
    await page.locator('.live-number span', { hasText: '±' }).waitFor();
    const size = () =>
      page.evaluate(() => {
        const { scrollWidth, scrollHeight } = document.documentElement;
        return { width: scrollWidth, height: scrollHeight };
      });
    await expect.poll(async () => (await size()).width).toBeLessThanOrEqual(looks.width);
    const lowest = looks.height + (looks.width < 760 ? 60 : 0);
    await expect.poll(async () => (await size()).height).toBeLessThanOrEqual(lowest);
    const small = () =>
      page.evaluate(
        () =>
          [...document.querySelectorAll('.live *, .live-tools *')].filter(
            (element) =>
              element.children.length === 0 &&
              element.textContent?.trim() !== '' &&
              !element.closest('.unseen') &&
              Number.parseFloat(getComputedStyle(element).fontSize) < 14,
          ).length,
      );
    await expect.poll(small).toBe(0);
    await expect.poll(() => axeFindings('live')).toEqual([]);
    await page.screenshot({
      path: join(pictures, `live-${looks.width}-${looks.dark ? 'dark' : 'light'}.png`),
    });
  });
});
