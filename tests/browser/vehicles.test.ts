/** Vehicles with either engine, and whether a change of engine is worth it. */

import { beforeEach, describe, expect, it } from 'vitest';
import {
  axeFindings,
  number,
  onDisk,
  open,
  page,
  patient,
  textOf,
  useWorkbench,
  withoutSentences,
  writeStudy,
} from './studyPage.ts';

useWorkbench();

describe('vehicles', () => {
  beforeEach(withoutSentences);
  it('tell what they carry with either engine, and follow an input that is changed', async () => {
    await open();
    await page.getByRole('tab', { name: 'Vehicles' }).click();
    const panel = page.locator('.vehicles');
    await expect.poll(() => textOf(panel), patient).toMatch(/Alder booster carries .* to 200.km/);
    await expect
      .poll(() => textOf(panel), patient)
      .toMatch(/With Alder P instead of Alder B, Alder booster carries .* more/);
    const payload = async () => textOf(number('Alder booster with Alder B, Payload').first());
    const before = await payload();
    const picture = page.getByRole('img', { name: /Alder booster on its way up/ });
    await expect.poll(() => picture.locator('path').count()).toBeGreaterThan(8);
    await expect.poll(() => axeFindings('vehicles')).toEqual([]);
    await page.getByText('Its inputs').click();
    const dry = page.getByRole('textbox', { name: 'Alder booster, Dry mass of the first stage' });
    await dry.fill('18 t');
    await dry.press('Enter');
    await expect.poll(payload, patient).not.toBe(before);
    await expect.poll(() => onDisk()).toContain('dry: 18 t');
    await dry.fill('-3 t');
    await dry.press('Enter');
    await expect.poll(async () => textOf(panel.getByRole('alert'))).toContain('dry');
    await dry.press('Escape');
    await number('Alder booster with Alder P, Payload').first().click();
    await expect.poll(() => textOf(page.locator('.card'))).toContain('Alder booster, payload to the orbit');
    await page.keyboard.press('Escape');
    // Numbers in its words lead to where they come from, and so do its inputs.
    await panel.locator('.finding').nth(1).getByRole('button').first().click();
    await expect
      .poll(() => textOf(page.locator('.card')))
      .toContain('booster.payload(engine = plug) - booster.payload');
    await page.keyboard.press('Escape');
    await page.getByText('Its inputs').click();
    await panel.getByRole('button', { name: 'Dry mass of the first stage' }).click();
    await expect.poll(() => textOf(page.locator('.card'))).toMatch(/Alder booster, .*18 t/s);
  });
});

describe('whether it is worth it', () => {
  it('is worked out on request, can be stopped, and answers the needs of the study', async () => {
    await writeStudy((await onDisk()).replace(/^sentences:$[\s\S]*?(?=^needs:$)/m, ''));
    await open();
    await page.getByRole('tab', { name: 'Worth' }).click();
    const panel = page.getByRole('tabpanel');
    const begin = panel.getByRole('button', { name: 'Work it out' });
    await expect.poll(() => begin.count()).toBe(2);
    await begin.first().click();
    await panel.getByRole('button', { name: 'Stop' }).click();
    await expect.poll(() => begin.count()).toBe(2);
    await begin.last().click();
    await panel.getByText('It is so where').waitFor(patient);
    await expect.poll(() => textOf(panel)).toMatch(/It is so where area ratio .* is at least/);
    await begin.click();
    await panel.getByText('On one basis: same throat area.').waitFor(patient);
    await expect.poll(() => textOf(panel)).toMatch(/specific impulse in vacuum\d/);
    await expect.poll(() => textOf(panel)).toContain('What a little more is worth to Alder booster');
    await expect.poll(() => axeFindings('worth')).toEqual([]);
    await number('Alder booster, first stage, one second').first().click();
    await expect.poll(() => textOf(page.locator('.card'))).toContain('payload for a little more');
    await page.keyboard.press('Escape');
    // No test names a rate; the step it stands for is one, and so is its sweep.
    const rate = number('Alder booster, first stage, one kilogram of dry mass').first();
    await rate.click();
    const card = page.locator('.card');
    await card.getByRole('button', { name: 'Make a sentence' }).click();
    await expect
      .poll(() => page.locator('.sentences textarea, .sentences input').first().inputValue())
      .toMatch(/Alder booster carries about \d+ kg less\.$/);
    await page.getByRole('tab', { name: 'Worth' }).click();
    // Of another study it would be untrue.
    await writeStudy((await onDisk()).replace('areaRatio: 60, kept', 'areaRatio: 50, kept'));
    await expect.poll(() => begin.count(), patient).toBe(2);
  });
});
