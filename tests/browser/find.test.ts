/** One box finds numbers, sentences, studies and commands by plain words. */

import { cp, mkdir, symlink } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import {
  axeFindings,
  folder,
  keepSentences,
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

const box = () => page.getByRole('combobox', { name: /^Find/ });
const option = (name: RegExp) => page.getByRole('option', { name });
/** The one that Enter takes. */
const active = () => textOf(page.locator('.find').getByRole('option', { selected: true }));

describe('the find box', () => {
  it('opens by key, tells a number of each engine where it was asked for, and opens its pedigree', async () => {
    await withoutSentences();
    await open();
    const original = await onDisk();
    await page.keyboard.press('Control+k');
    await expect.poll(() => box().evaluate((element) => element === document.activeElement)).toBe(true);
    await page.keyboard.type('exit pressure at 10 km');
    await option(/^Alder B, .*at 10\.0 km.*bar$/).waitFor();
    await expect.poll(() => active()).toMatch(/^Alder B, pressure/);
    // U.S. Standard Atmosphere 1976, table I: 10 000 m geometric, 2.6500e4 Pa; a plug's gas leaves at that of the air.
    await expect.poll(() => textOf(option(/^Alder P, /).first())).toMatch(/at 10\.0 km0\.26\d* bar$/);
    await expect.poll(() => axeFindings('find box')).toEqual([]);
    await page.keyboard.press('ArrowDown');
    await expect.poll(() => active()).toMatch(/^Alder P/);
    await page.keyboard.press('Enter');
    await expect.poll(() => box().count()).toBe(0);
    await expect.poll(() => textOf(page.locator('.card'))).toMatch(/Alder P, .*at 10\.0 km/);
    await expect.poll(() => slider().getAttribute('aria-valuenow')).toBe('10');
    await expect.poll(() => onDisk()).toBe(original);
  });

  it('finds sentences, tabs and commands; Escape closes it and gives the focus back', async () => {
    await keepSentences('vacuum-gain', 'always-better');
    await open();
    await page.getByRole('button', { name: /^Find/ }).click();
    await page.keyboard.type('always better');
    await expect.poll(active).toMatch(/^A plug is always better/);
    await page.keyboard.press('Enter');
    await page.locator('#sentence-always-better .details').waitFor();
    await slider().focus();
    await page.keyboard.press('/');
    await page.keyboard.type('models');
    await expect.poll(active).toMatch(/^Models/);
    await page.keyboard.press('Enter');
    await expect
      .poll(() => page.getByRole('tab', { name: 'Models' }).getAttribute('aria-selected'))
      .toBe('true');
    await page.getByRole('button', { name: /^Find/ }).click();
    await page.keyboard.type('zebra');
    await expect.poll(() => textOf(page.locator('.find [role=status]'))).toBe('Nothing fits these words.');
    await page.keyboard.press('Escape');
    await expect.poll(() => box().count()).toBe(0);
    await expect.poll(() => page.evaluate(() => document.activeElement?.textContent)).toMatch(/^Find/);
  });

  it('finds figures, which open over the page as they are in files, and what the command line does', async () => {
    await withoutSentences();
    await open();
    await page.keyboard.press('Control+k');
    await page.keyboard.type('pressure on the wall from chamber to lip');
    await option(/^Pressure on the wall from chamber to lip.*figure$/).click();
    const drawn = page.locator('.figure-drawn');
    await expect.poll(() => drawn.locator('path').count()).toBeGreaterThan(5);
    await expect.poll(() => drawn.getAttribute('aria-label')).toMatch(/Alder B/);
    await expect.poll(() => axeFindings('figure')).toEqual([]);
    const download = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save its numbers' }).click();
    expect((await download).suggestedFilename()).toBe('alder-booster-pressure-along-wall.csv');
    await page.keyboard.press('Escape');
    await expect.poll(() => drawn.count()).toBe(0);
    await page.keyboard.press('Control+k');
    await page.keyboard.type('film');
    await option(/^Film of the climb/).waitFor();
    await box().fill('pack the study');
    await option(/^Pack the study for publishing/).click();
    await expect
      .poll(() => textOf(page.locator('.find [role=status]')))
      .toMatch(/plumeline pack \. --out \.\.\/package$/);
    for (const [words, found] of [
      ['live', /^Live answer, full screen/],
      ['dark', /^Dark theme/],
      ['mach number colour', /^Draw the gas by Mach number/],
      ['choking', /choking$/],
    ] as const) {
      await box().fill(words);
      await option(found).first().waitFor();
    }
  });

  it('finds the studies beside this one, and follows no link out', async () => {
    const starters = fileURLToPath(new URL('../../starters/', import.meta.url));
    const beside = join(folder, '..', 'dual-bell');
    await mkdir(beside);
    await cp(join(starters, 'dual-bell'), beside, { recursive: true });
    await symlink(join(starters, 'choking'), join(folder, '..', 'linked'));
    await withoutSentences();
    await open();
    const reply = await page.request.get(new URL('/api/near', page.url()).href);
    const near = (await reply.json()) as { studies: { name: string }[]; starters: { name: string }[] };
    expect(near.studies.map(({ name }) => name)).toEqual(['dual-bell']);
    expect(near.starters.length).toBeGreaterThan(30);
    await page.keyboard.press('Control+k');
    await page.keyboard.type('dual bell');
    const group = page.getByRole('group', { name: 'Studies beside this one' });
    await group.getByRole('option').first().click();
    const status = page.locator('.find [role=status]');
    await expect.poll(() => textOf(status)).toMatch(/plumeline open \.\.\/dual-bell$/);
    // A number of it is worked out when it is chosen.
    await page.locator('#find-field').fill('specific impulse in vacuum dual-bell');
    const numbers = page.getByRole('group', { name: 'Numbers of studies beside this one' });
    const first = numbers.getByRole('option').first();
    await expect
      .poll(() => textOf(first))
      .toMatch(/ in dual-bell, specific impulse in vacuum.*to be worked out$/);
    await first.click();
    await expect.poll(() => textOf(first), patient).toMatch(/ in vacuum\d{3}\.\d\ss$/);
    await expect.poll(() => axeFindings('numbers of another study')).toEqual([]);
  });
});
