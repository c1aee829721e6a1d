/** Themes, widths and the accessibility checker. */

import { join } from 'node:path';
import { beforeEach, describe, expect, it } from 'vitest';
import {
  answered,
  axeFindings,
  keepSentences,
  number,
  open,
  page,
  pictures,
  ready,
  useWorkbench,
  withoutSentences,
} from './studyPage.ts';

useWorkbench();

describe('the theme', () => {
  beforeEach(withoutSentences);
  it('follows the system, can be turned, and is remembered', async () => {
    await open({ dark: true });
    const now = () => page.evaluate(() => document.documentElement.dataset.theme);
    await expect.poll(() => now()).toBe('dark');
    await page.getByRole('button', { name: 'Light' }).click();
    await expect.poll(() => now()).toBe('light');
    await page.reload();
    await ready();
    await expect.poll(() => now()).toBe('light');
  });
});

describe('access for everyone', () => {
  it.each([
    // 720 is 200 % of 1440.
    { width: 1440, height: 900, isDark: false, narrower: [1000, 720] },
    { width: 390, height: 844, isDark: true, narrower: [] },
  ])(
    'keeps to the width, has controls of 24 by 24 pixels or more, and axe finds nothing (from %o)',
    async ({ width, height, isDark, narrower }) => {
      await keepSentences('vacuum-gain', 'pad-gain', 'always-better');
      await open({ width, height, dark: isDark });
      await answered();
      const small = () =>
        page.evaluate(() =>
          [...document.querySelectorAll('button, input, select, [role=slider], [role=tab]')]
            .map((element) => ({
              name: element.outerHTML.slice(0, 120),
              box: element.getBoundingClientRect(),
            }))
            .filter(({ box }) => box.width > 0 && (box.width < 24 || box.height < 24))
            .map(({ name, box }) => `${name} ${box.width}×${box.height}`),
        );
      await expect.poll(small).toEqual([]);
      for (const each of [...narrower, width]) {
        await page.setViewportSize({ width: each, height });
        await expect.poll(() => page.evaluate(() => innerWidth)).toBe(each);
        const wide = () => page.evaluate(() => document.documentElement.scrollWidth);
        await expect.poll(wide, { message: `at ${each}` }).toBeLessThanOrEqual(each);
      }

      const check = (where: string) => expect.poll(() => axeFindings(where)).toEqual([]);
      const picture = (theme: string) =>
        page.screenshot({ path: join(pictures, `${width}-${theme}.png`), fullPage: width < 760 });
      const inputs = page.getByRole('tab', { name: 'Inputs', exact: true });
      const [first, then] = isDark ? (['dark', 'light'] as const) : (['light', 'dark'] as const);
      await picture(first);
      const tabs = await page.getByRole('tab').allTextContents();
      expect(tabs.length).toBeGreaterThan(5);
      for (const tab of tabs) {
        await page.getByRole('tab', { name: tab, exact: true }).click();
        await check(`${tab}, ${first}`);
      }
      await number('.*thrust').first().click();
      await check(`card, ${first}`);
      await page.keyboard.press('Escape');

      // The other theme differs by colours alone.
      await inputs.click();
      await page.emulateMedia({ colorScheme: then });
      await expect.poll(() => page.evaluate(() => document.documentElement.dataset.theme)).toBe(then);
      await picture(then);
      await check(`inputs, ${then}`);
      for (const tab of ['Sentences', 'Models']) {
        await page.getByRole('tab', { name: tab, exact: true }).click();
        await check(`${tab}, ${then}`);
      }
      await number('.*thrust').first().click();
      await check(`card, ${then}`);
    },
  );
});
