/** The explorable page of a package, opened straight from disk in a real browser. */

import { mkdirSync, mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { runMain } from '../faces/cli/runMain.ts';
import { launchChromium } from './chromium.ts';

const place = mkdtempSync(join(tmpdir(), 'plumeline-explore-'));
const evil = `</script></title><script>window.caught=1</script><img src=x onerror=window.caught=1>\u202e\`\${window.caught=1}`;
const study = `plumeline: 1
question: ${JSON.stringify(`Which? ${evil}`)}
engines:
  cold: { name: ${JSON.stringify(evil)}, propellants: { gamma: 1.4, molarMass: 28 g/mol, temperature: 300 K }, chamber: { pressure: 70 ± 1 bar, efficiency: 100 % }, size: { throat: 100 mm }, nozzle: { kind: ideal, areaRatio: 10 } }
  wide: { like: cold, name: Wide, nozzle: { kind: ideal, areaRatio: 14 } }
sentences:
  - { id: grows, say: ${JSON.stringify(`It grows. ${evil}`)}, holds: cold.thrust(vacuum) > cold.thrust(0 km), sources: [leaflet] }
sources:
  leaflet: { title: ${JSON.stringify(evil)}, where: ${JSON.stringify(evil)} }
`;
const axe = fileURLToPath(new URL('../../node_modules/axe-core/axe.min.js', import.meta.url));

let browser: Browser;
let file: string;
/** What the page opened last asked for, and what the browser refused or complained of. */
let asked: string[];
let complaints: string[];

beforeAll(async () => {
  mkdirSync(join(place, 'study'));
  writeFileSync(join(place, 'study', 'study.yaml'), study);
  const ran = await runMain(['pack', join(place, 'study'), '--out', join(place, 'package'), '--no-clips']);
  if (ran.status !== 0) throw new Error(ran.err);
  file = join(place, 'package', 'explore.html');
  browser = await launchChromium();
}, 120_000);
afterEach(async () => {
  for (const context of browser.contexts()) await context.close();
});
afterAll(async () => {
  await browser?.close();
  rmSync(place, { recursive: true, force: true });
});

async function open(
  width: number,
  height: number,
  colorScheme: 'light' | 'dark',
  bypassCSP = false,
): Promise<Page> {
  const context = await browser.newContext({ viewport: { width, height }, colorScheme, bypassCSP });
  const page = await context.newPage();
  [asked, complaints] = [[], []];
  page.on('request', (request) => asked.push(request.url()));
  page.on('console', (message) => complaints.push(message.text()));
  page.on('pageerror', (error) => complaints.push(error.message));
  await page.goto(pathToFileURL(file).href);
  return page;
}

const slider = (page: Page) => page.getByRole('slider');
const told = async (page: Page): Promise<string | undefined> =>
  (await slider(page).getAttribute('aria-valuetext'))?.replaceAll('\u00a0', ' ');

describe('the explorable page', () => {
  it('is one file below 2 MB that asks for nothing and breaks no rule of its own', async () => {
    expect(statSync(file).size).toBeLessThanOrEqual(2_000_000);
    const page = await open(1440, 900, 'light');
    await slider(page).focus();
    await page.keyboard.press('End');
    await expect.poll(() => told(page)).toMatch(/^vacuum/);
    expect(asked).toEqual([pathToFileURL(file).href]);
    expect(complaints).toEqual([]);
  });

  it('follows the keys: pictures, cursors and numbers move together', async () => {
    const page = await open(1440, 900, 'light');
    await expect.poll(() => told(page)).toBe('pad, 1.01 bar');
    const state = async () => ({
      cut: await page.locator('[data-figure=cut]').innerHTML(),
      impulse: await page.locator('[data-figure=impulse] .cursor').innerHTML(),
      cell: await page.locator('[data-cell="1"]').textContent(),
    });
    const pad = await state();
    await slider(page).focus();
    for (let i = 0; i < 12; i++) await page.keyboard.press('ArrowRight');
    // U.S. Standard Atmosphere 1976, table I: 12 000 m geometric, 1.9399e4 Pa
    await expect.poll(() => told(page)).toBe('12 km, 0.19 bar');
    await expect.poll(async () => (await state()).cut).not.toBe(pad.cut);
    await expect.poll(async () => (await state()).impulse).not.toBe(pad.impulse);
    await expect
      .poll(async () => Number.parseFloat((await state()).cell!))
      .toBeGreaterThan(Number.parseFloat(pad.cell!));
    await page.keyboard.press('End');
    await expect.poll(() => told(page)).toMatch(/^vacuum/);
  });

  it('a number opens its pedigree: meaning, span, equation, model, source', async () => {
    const page = await open(1440, 900, 'light');
    await page.locator('[data-cell="1"]').click();
    const words = () => page.getByRole('dialog').textContent();
    for (const part of [
      'specific impulse',
      'Meaning',
      'Span',
      'Equation',
      'I_sp',
      'Model',
      'Source',
      'Sutton',
    ])
      await expect.poll(words).toContain(part);
    await expect.poll(words).toContain('(95 % of');
    await page.keyboard.press('Escape');
    await expect.poll(() => page.getByRole('dialog').count()).toBe(0);
  });

  it('words of a study stay words', async () => {
    const page = await open(1440, 900, 'dark');
    await expect.poll(() => page.locator('h1').textContent()).toContain('<img src=x onerror');
    await expect.poll(() => page.locator('img').count()).toBe(0);
    await expect.poll(() => page.locator('script').count()).toBe(2);
    await expect.poll(() => page.locator('main').textContent()).not.toContain('\u202e');
    // Last: what was let in would have had its time to run.
    expect(await page.evaluate(() => 'caught' in window)).toBe(false);
  });

  for (const scheme of ['light', 'dark'] as const) {
    it(`has nothing that axe finds, and fits a telephone, in ${scheme}`, async () => {
      // Only the checker's own script needs the policy out of the way.
      const page = await open(390, 844, scheme, true);
      await expect
        .poll(() => page.evaluate(() => document.documentElement.scrollWidth))
        .toBeLessThanOrEqual(390);
      await page.addScriptTag({ path: axe });
      const found = async (): Promise<string[]> =>
        page.evaluate(async () => {
          const { violations } = await (
            window as unknown as {
              axe: { run: () => Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> };
            }
          ).axe.run();
          return violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html.slice(0, 160)}`);
        });
      await expect.poll(() => found()).toEqual([]);
      await page.locator('[data-cell="1"]').click();
      await expect.poll(() => found()).toEqual([]);
    });
  }
});
