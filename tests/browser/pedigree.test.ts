/** The pedigree of a number: where it comes from, and how far it may go. */

import { beforeEach, describe, expect, it } from 'vitest';
import {
  axeFindings,
  number,
  onDisk,
  open,
  page,
  patient,
  server,
  slider,
  textOf,
  useWorkbench,
  withoutSentences,
  writeStudy,
} from './studyPage.ts';

useWorkbench();

describe('the pedigree of a number', () => {
  beforeEach(withoutSentences);
  it('opens by the keyboard, takes the focus, tells span, inputs and model, and Escape goes back', async () => {
    await open();
    const isp = number('Alder B, specific impulse');
    await isp.focus();
    await page.keyboard.press('Enter');
    const card = page.locator('.card');
    await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toBe('card-heading');
    await card.locator('.span').waitFor(patient);
    const told = () => textOf(card);
    for (const part of ['What it means', 'Equation', 'How sure it is', 'Spoken', 'Source', 'Limits'])
      await expect.poll(told).toContain(part);
    await expect.poll(told).toMatch(/lies between 2\d\d\s?s and 30\d\s?s/);
    // Thrust over mass flow hangs on the pressure in the chamber; more of it, more of the other.
    await expect
      .poll(() => textOf(card.locator('.hangs-on tr', { hasText: 'chamber pressure' })))
      .toMatch(/\+0\.\d/);
    await expect.poll(() => axeFindings('pedigree')).toEqual([]);
    const page2 = await card.getByRole('link').getAttribute('href');
    const reply = await page.request.get(new URL(page2 ?? '', server.url).href);
    expect(reply.status()).toBe(200);
    expect(await reply.text()).toMatch(/^# /);
    await page.keyboard.press('Escape');
    await expect.poll(() => card.count()).toBe(0);
    await expect.poll(() => isp.evaluate((element) => element === document.activeElement)).toBe(true);
    await isp.click();
    await card.getByRole('button', { name: 'Close' }).click();
    await expect.poll(() => page.locator('.inputs').count()).toBe(1);
  });

  it('is there for ledger, engine, match, inputs and losses, and makes a sentence', async () => {
    await open();
    const opens = async (name: string, words: string) => {
      await number(name).first().click();
      await expect.poll(() => textOf(page.locator('.card'))).toContain(words);
      await page.keyboard.press('Escape');
    };
    await opens('Alder P, made for', 'match');
    await opens('Alder B, what it is', 'area ratio');
    await opens('Alder P, the gas', 'What it means');
    await opens('Alder B, .* in the drawing', 'What it means');
    await opens('Short answer at the pad', 'Worked out from several numbers');
    await opens('Short answer Alder B and Alder P', 'altitude at which the two tie');
    await number('Chamber pressure').first().click();
    await expect.poll(() => textOf(page.locator('.card'))).toContain('as set in the study');
    await page.keyboard.press('Escape');
    await page.getByRole('tab', { name: 'Models' }).click();
    await opens('Alder B, delivered', 'specific impulse');
    await number('Alder B, specific impulse').first().click();
    await page.getByRole('button', { name: 'Make a sentence' }).click();
    const test = page.getByLabel('Test that decides them');
    await expect.poll(() => test.inputValue()).toMatch(/^bell\.specificImpulse\(0 km\) is about 29\d\.\d s$/);
    await page.getByRole('button', { name: 'Cancel' }).click();
  });

  it('gives each number its span, and says where a difference is too close to call', async () => {
    await writeStudy((await onDisk()).replace('areaRatio: 60, kept', 'areaRatio: 25, kept'));
    await open();
    await page.locator('.span-words').first().waitFor(patient);
    await slider().focus();
    await page.keyboard.press('End');
    await expect.poll(() => textOf(page.locator('table.ledger'))).toContain('too close to call');
  });
});
