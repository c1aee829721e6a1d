/** Films from the workbench: what is filmed is chosen, how far it is can be seen, and it can be stopped. */

import { describe, expect, it } from 'vitest';
import { axeFindings, open, page, patient, useWorkbench, withoutSentences } from './studyPage.ts';

useWorkbench();

describe('the film button', () => {
  it('offers each clip of the study in each shape, films it with progress, and stops', async () => {
    await withoutSentences();
    await open();
    await page.locator('.film-choice summary').click();
    const clip = page.getByLabel('Film of');
    await clip.waitFor();
    // The flights come after the engines.
    const offered = () => clip.locator('option').allTextContents();
    for (const words of [
      'Engines cut open, climbing',
      'Engines cut open, throttling',
      'The climb over pressure along the walls',
      'Drawn in: the way up of Alder booster',
      'Drawn in: the sweep area-ratio',
      'Alder P growing ring by ring',
    ])
      await expect.poll(offered, patient).toContain(words);
    await expect.poll(() => axeFindings('film choice')).toEqual([]);
    await clip.selectOption({ label: 'Alder B growing ring by ring' });
    await page.getByLabel('Shape').selectOption('1:1');
    await expect.poll(() => page.locator('.film-choice summary').textContent()).toBe('1:1');
    await page.getByRole('button', { name: 'Film', exact: true }).click();
    const stop = page.getByRole('button', { name: 'Stop film' });
    await stop.waitFor();
    // Frames are counted: 25 a second for as long as a climb takes.
    await expect.poll(() => page.locator('.film progress').getAttribute('max'), patient).not.toBe('1');
    await stop.click();
    await page.getByRole('button', { name: 'Film', exact: true }).waitFor();
    expect(await page.getByRole('link', { name: 'Save film' }).count()).toBe(0);
    // What was chosen stays chosen.
    await expect.poll(() => page.locator('.film-choice summary').textContent()).toBe('1:1');
  });
});
