/** The script in the workbench: read with its numbers, written into its file, read aloud. */

import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import {
  axeFindings,
  browser,
  folder,
  keepSentences,
  open,
  page,
  patient,
  textOf,
  useWorkbench,
} from './studyPage.ts';

useWorkbench();

const scriptOnDisk = () => readFile(join(folder, 'script.md'), 'utf8');
/** Without the flights of the example's own script and of most of its sentences, which take their time. */
const openScript = async (text: string) => {
  await writeFile(join(folder, 'script.md'), text);
  await keepSentences('vacuum-gain', 'always-better');
  await open({ width: 1024, height: 768 });
  await page.getByRole('tab', { name: 'Script' }).click();
  await page.locator('.script-line').first().waitFor();
};

describe('the script', () => {
  it('shows its numbers, and is written into its file', async () => {
    await openScript(
      'In vacuum the bell gives {{bell.specificImpulse(vacuum), about}}. {says=vacuum-gain}\n',
    );
    const vacuum = () => textOf(page.locator('.script-number[title="bell.specificImpulse(vacuum)"]').first());
    // The bell of the example gives some 343 s in vacuum, the same as in the ledger.
    await expect.poll(vacuum).toMatch(/^about 34\d.s$/);
    await expect.poll(() => axeFindings('script')).toEqual([]);
    await page.getByRole('button', { name: 'Write', exact: true }).click();
    const field = page.getByLabel('Text of script.md');
    await field.fill('# T\n\n## S\n\nNow {{bell.areaRatio}} it is.\n');
    await expect.poll(scriptOnDisk).toContain('Now {{bell.areaRatio}}');
    await page.getByRole('button', { name: 'Done' }).click();
    await expect.poll(() => textOf(page.locator('.script-line').first()), patient).toBe('Now 25 it is.');
  });

  it('is written with its parts marked, numbers found by plain words, faults at their line, and undone by keys', async () => {
    await openScript('## One\n\nThe first line.\n');
    await page.getByRole('button', { name: 'Write', exact: true }).click();
    const field = page.getByLabel('Text of script.md');
    await field.focus();
    await page.keyboard.press('Control+End');
    await page.keyboard.type('\nAt ten kilometres it leaves at {{exit pressure at 10 km alder b');
    const offer = page.getByRole('option', { name: /^Alder B, .*bell\.exitPressure\(10 km\)/ });
    await offer.waitFor();
    await expect.poll(() => field.getAttribute('aria-activedescendant')).toBe('script-offer-0');
    await expect.poll(() => axeFindings('writing')).toEqual([]);
    await page.keyboard.press('Enter');
    await expect.poll(() => field.inputValue()).toMatch(/leaves at \{\{bell\.exitPressure\(10 km\)\}\}$/);
    // Beside it as it reads; what cannot be read is told at its line.
    const reads = page.locator('.reads');
    await expect.poll(() => textOf(reads), patient).toMatch(/leaves at 0\.\d+\sbar/);
    await page.keyboard.type('. So {{bell.wingspan}}.');
    const fault = page.locator('.writing .script-problems li', { hasText: 'Line 5' });
    await expect.poll(() => fault.count(), patient).toBeGreaterThan(0);
    await expect.poll(() => page.locator('.script-field .line.fails').count()).toBe(1);
    // The coloured text lies exactly behind the field's own.
    const heights = () =>
      page.evaluate(() =>
        ['.script-field pre', '#script-text'].map(
          (place) => document.querySelector(place)?.getBoundingClientRect().height ?? 0,
        ),
      );
    await expect.poll(async () => (await heights()).reduce((behind, written) => behind - written)).toBe(0);
    await expect
      .poll(() => textOf(page.locator('.writing-head [role=status]')))
      .toContain('saved in script.md');
    await expect.poll(scriptOnDisk).toContain('wingspan');
    const written = () => field.inputValue();
    for (let steps = 0; steps < 100 && (await written()) !== '## One\n\nThe first line.\n'; steps++)
      await page.keyboard.press('Control+z');
    expect(await written()).toBe('## One\n\nThe first line.\n');
    await expect.poll(scriptOnDisk).toBe('## One\n\nThe first line.\n');
  });

  it('has its numbers lead to where they come from, marks them in all views, and takes one up from its card', async () => {
    await openScript('Now {{bell.specificImpulse(12 km)}} it is.\n');
    await page.locator('button.script-number').click();
    await expect.poll(() => textOf(page.locator('.card .whose'))).toBe('Alder B, specific impulse');
    // Its place is on the scale, its curve is lit, and its row in the ledger marked.
    await expect
      .poll(() => page.getByRole('slider', { name: 'Altitude' }).getAttribute('aria-valuenow'))
      .toBe('12');
    await expect.poll(() => page.locator('svg.lit path').count()).toBeGreaterThan(0);
    await expect.poll(() => page.locator('.ledger .number.marked').count()).toBe(1);
    await page.locator('.card').getByRole('button', { name: 'Close', exact: true }).click();
    await expect.poll(() => page.locator('svg.lit path').count()).toBe(0);
    await page.locator('.ledger .number').first().click();
    await page.getByRole('button', { name: 'Use in script' }).click();
    await expect
      .poll(() => page.getByLabel('Text of script.md').inputValue())
      .toBe('Now {{bell.specificImpulse(12 km)}} it is.\n\n{{bell.specificImpulse(12 km)}}');
    await page.keyboard.press('Escape');
    await expect.poll(() => page.locator('dialog.writing').count()).toBe(0);
    await expect.poll(scriptOnDisk).toContain('it is.\n\n{{bell');
  });

  it('is read aloud in large type, by keys and pedals, mirrored where asked', async () => {
    await openScript('## One\n\nThe first line.\n\n## Two\n\nThe second line.\n\nThe third line.\n');
    await page.getByRole('button', { name: 'Read aloud' }).click();
    const now = () => textOf(page.locator('.reading-words p.now'));
    await page.locator('.reading-words p.now').waitFor();
    const first = await now();
    await page.keyboard.press('PageDown');
    await expect.poll(now).not.toBe(first);
    await page.keyboard.press('PageUp');
    await expect.poll(now).toBe(first);
    const looks = (property: string) =>
      page
        .locator('.reading-words')
        .evaluate((element, name) => getComputedStyle(element).getPropertyValue(name), property);
    await expect.poll(async () => Number.parseFloat(await looks('font-size'))).toBeGreaterThan(40);
    await page.keyboard.press('m');
    await expect.poll(() => looks('transform')).toMatch(/^matrix\(-1/);
    await page.keyboard.press('m');
    await expect.poll(() => axeFindings('reading')).toEqual([]);
    await page.keyboard.press('Escape');
    await expect.poll(() => page.locator('dialog.reading').count()).toBe(0);
    // The same from one file on disk, without a network.
    const saved = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save to read elsewhere' }).click();
    const file = join(folder, 'read.html');
    await (await saved).saveAs(file);
    const tablet = await browser.newContext({ viewport: { width: 1024, height: 768 }, offline: true });
    const alone = await tablet.newPage();
    const faults: string[] = [];
    alone.on('console', (message) => faults.push(message.text()));
    alone.on('pageerror', (error) => faults.push(String(error)));
    await alone.goto(`file://${file}`);
    const there = () => textOf(alone.locator('.reading-words p.now'));
    await expect.poll(() => there()).toBe('The first line.');
    // A tablet has no keys: the buttons are on the screen, all of them.
    const barEnds = async () => {
      const bar = (await alone.locator('.reading-bar').boundingBox())!;
      return bar.y + bar.height;
    };
    await expect.poll(barEnds).toBeLessThanOrEqual(768);
    await alone.getByRole('button', { name: 'Next' }).click();
    await expect.poll(there).toBe('The second line.');
    // Three words at 140 a minute are read in 1.3 s; then the next line is read.
    await alone.keyboard.press(' ');
    await expect.poll(there).toBe('The third line.');
    expect(faults).toEqual([]);
  });
});
