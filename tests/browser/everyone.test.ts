/** The page for those without a mouse, with a finger, in their first minute, and on a day when the machine fails. */

import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import {
  answered,
  context,
  number,
  onDisk,
  open,
  page,
  patient,
  slider,
  textOf,
  useWorkbench,
  withoutSentences,
} from './studyPage.ts';

useWorkbench();

describe('the keyboard', () => {
  it('reaches every control in the order of the page, each with a ring that is seen', async () => {
    await withoutSentences();
    await open();
    await answered();
    // Of tabs and of what one control moves only one is a stop; arrows go on from there.
    const wanted = await page.evaluate(() => {
      const all = [
        ...document.querySelectorAll('button, input, select, textarea, summary, a[href], [tabindex="0"]'),
      ].filter(
        (one): one is HTMLElement =>
          one instanceof HTMLElement &&
          one.tabIndex >= 0 &&
          one.checkVisibility({ visibilityProperty: true }),
      );
      const open = all.filter((one) => !('disabled' in one && one.disabled === true));
      open.forEach((one, i) => {
        one.dataset.stop = String(i);
      });
      return open.length;
    });
    expect(wanted).toBeGreaterThan(30);
    await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
    const met = new Set<string>();
    const ringless: string[] = [];
    for (let i = 0; i < wanted + 20 && met.size < wanted; i++) {
      await page.keyboard.press('Tab');
      const stop = await page.evaluate(() => {
        const now = document.activeElement as HTMLElement | null;
        if (now === null || now === document.body) return null;
        const ringOf = (one: Element): boolean => {
          const { outlineStyle, outlineWidth, boxShadow } = getComputedStyle(one);
          return (outlineStyle !== 'none' && Number.parseFloat(outlineWidth) >= 1) || boxShadow !== 'none';
        };
        // The plumb bob shows the ring of the scale.
        const shown = now.getAttribute('role') === 'slider' ? (now.nextElementSibling ?? now) : now;
        const drawn = shown === now ? null : shown.querySelector('.ring');
        const hasRing =
          ringOf(now) || ringOf(shown) || (drawn !== null && getComputedStyle(drawn).display !== 'none');
        return { stop: now.dataset.stop ?? '', what: now.outerHTML.slice(0, 90), hasRing };
      });
      if (stop === null) continue;
      // What scrolls may be a stop of its own.
      if (stop.stop !== '') met.add(stop.stop);
      if (!stop.hasRing) ringless.push(stop.what);
    }
    const missed = await page.evaluate(
      (seen) =>
        [...document.querySelectorAll<HTMLElement>('[data-stop]')]
          .filter((one) => !seen.includes(one.dataset.stop ?? ''))
          .map((one) => one.outerHTML.slice(0, 90)),
      [...met],
    );
    expect(missed).toEqual([]);
    expect(ringless).toEqual([]);
  });
});

describe('a finger', () => {
  it('drags the bob, and does not scroll the page with it', async () => {
    await withoutSentences();
    await open({ width: 390, height: 844, touch: true });
    // What is still to come would move the scale.
    await answered();
    await slider().scrollIntoViewIfNeeded();
    const box = await slider().boundingBox();
    if (box === null) throw new Error('the scale is on the page');
    const debug = await context.newCDPSession(page);
    const x = box.x + box.width / 2;
    const touchAt = (type: string, y: number | null) =>
      debug.send('Input.dispatchTouchEvent', {
        type: type as 'touchStart',
        touchPoints: y === null ? [] : [{ x, y }],
      });
    const scrolled = () => page.evaluate(() => scrollY);
    const before = await scrolled();
    await touchAt('touchStart', box.y + box.height * 0.9);
    for (const share of [0.8, 0.7, 0.6, 0.5]) await touchAt('touchMove', box.y + box.height * share);
    await touchAt('touchEnd', null);
    const here = async () => Number(await slider().getAttribute('aria-valuenow'));
    await expect.poll(here).toBeGreaterThan(15);
    expect(await here()).toBeLessThan(30);
    expect(await scrolled()).toBe(before);
  });
});

describe('a machine that fails', () => {
  it('keeps what was written or stepped: it is on disk with nothing more to be done, and stays there', async () => {
    await withoutSentences();
    await open();
    const pressure = page.locator('input[id="field-engines.bell.chamber.pressure"]');
    await pressure.focus();
    await page.keyboard.press('ArrowUp');
    await expect.poll(onDisk).toContain('pressure: 101 bar');
    await pressure.fill('104 bar');
    await pressure.press('Enter');
    await expect.poll(onDisk).toContain('pressure: 104 bar');
    // The page goes without a word.
    const debug = await context.newCDPSession(page);
    debug.send('Page.crash').catch(() => undefined);
    await page.waitForEvent('crash');
    expect(await onDisk()).toContain('pressure: 104 bar');
  });
});

describe('a first walk', () => {
  it('shows what it is, climbs, tells a verdict and a pedigree, and begins an own study', async () => {
    await open({ still: false });
    const began = Date.now();
    await expect.poll(() => textOf(page.locator('h1'))).toContain('How much does a plug');
    await page.getByRole('button', { name: 'Climb' }).click();
    await expect
      .poll(async () => Number(await slider().getAttribute('aria-valuenow')), patient)
      .toBeGreaterThan(1);
    await page.getByRole('button', { name: 'Stop' }).click();
    await page.locator('.verdict-strip button').first().click();
    await expect
      .poll(() => textOf(page.locator('.sentences')), patient)
      .toMatch(/Safe to say|Say with care|Don’t say/i);
    await number('Alder B, specific impulse').first().click();
    await expect.poll(() => textOf(page.locator('.card'))).toContain('What it means');
    await page.keyboard.press('Escape');
    await page.keyboard.press('Control+k');
    await page.keyboard.type('bell against plug');
    await page.getByRole('group', { name: 'Starters' }).getByRole('option').first().click();
    await expect
      .poll(() => textOf(page.locator('.find [role=status]')))
      .toMatch(/plumeline new my-study --from /);
    // A busy machine checks sentences slowly; a person is not waiting for more than that.
    expect(Date.now() - began).toBeLessThan(120_000);
  });
});

describe('what the page loads', () => {
  it('is at most 300 kB of script, compressed, without the solver: that is in the workers', async () => {
    await withoutSentences();
    await open();
    const assets = fileURLToPath(new URL('../../dist/faces/workbench/assets/', import.meta.url));
    const loaded = await page.evaluate(() =>
      [
        ...document.querySelectorAll<HTMLScriptElement | HTMLLinkElement>(
          'script[src], link[rel=modulepreload]',
        ),
      ].map((one) => ('src' in one ? one.src : one.href)),
    );
    const names = new Set(loaded.map((address) => new URL(address).pathname.split('/').at(-1)));
    const all = await readdir(assets);
    const files = all.filter((name) => names.has(name));
    expect(files.length).toBeGreaterThan(0);
    let bytes = 0;
    for (const name of files) bytes += gzipSync(await readFile(join(assets, name))).length;
    expect(bytes).toBeLessThan(300_000);
    const textOfAll = async (some: readonly string[]) =>
      (await Promise.all(some.map((name) => readFile(join(assets, name), 'utf8')))).join('\n');
    // Problems that only solving and drawing can tell.
    const own = await textOfAll(files);
    for (const code of ['too-many-unknowns', 'sweep-not-finite']) expect(own).not.toContain(code);
    const worker = all.filter((name) => name.startsWith('deskWorker'));
    expect(await textOfAll(worker)).toContain('too-many-unknowns');
  });
});
