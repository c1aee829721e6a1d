/** Sentences with their verdicts, and what no computation decides. */

import { describe, expect, it } from 'vitest';
import {
  axeFindings,
  keepSentences,
  onDisk,
  open,
  page,
  patient,
  textOf,
  useWorkbench,
  writeStudy,
} from './studyPage.ts';

useWorkbench();

const sentence = (id: string) => page.locator(`#sentence-${id}`);
const stateOf = (id: string) => textOf(sentence(id).locator('.state'));
const openSentences = () => page.getByRole('tab', { name: 'Sentences' }).click();

/** Until the verdicts on screen are the last word. */
const settled = () => page.locator('.sentences-head', { hasText: /safe to say/ }).waitFor(patient);

describe('sentences with their verdicts', () => {
  it('are checked, and each opens to what stands behind it', async () => {
    await open();
    await openSentences();
    await settled();
    await expect.poll(() => stateOf('vacuum-gain')).toMatch(/^Safe to say, holds/);
    await expect.poll(() => stateOf('always-better')).toMatch(/^Don’t say, never holds/);
    // Told apart without colour: a silhouette of its own for each verdict.
    const drawn = (id: string) => sentence(id).locator('.verdict-mark').first().innerHTML();
    const marks = () => Promise.all(['vacuum-gain', 'always-better', 'pad-gain'].map(drawn));
    await expect.poll(async () => new Set(await marks()).size).toBe(3);
    await page.getByRole('button', { name: /^A plug is always better/ }).click();
    const details = () => textOf(sentence('always-better').locator('.details'));
    for (const part of [
      'True instead',
      'Numbers that decide',
      'What matters most',
      'Strong words',
      'The test',
    ])
      await expect.poll(details, patient).toContain(part);
    await expect.poll(() => axeFindings('verdicts')).toEqual([]);
    await sentence('always-better').locator('.number').first().click();
    await expect.poll(() => textOf(page.locator('.card'))).toContain('What it means');
  });

  it('change when an input is edited, and the change is told', async () => {
    await keepSentences('vacuum-gain', 'thrust-grows', 'pad-gain', 'always-better');
    await open();
    await openSentences();
    await settled();
    const was = await stateOf('vacuum-gain');
    await page.getByRole('tab', { name: 'Inputs' }).click();
    const field = page.locator('input[id="field-engines.plug.nozzle.areaRatio"]');
    await field.fill('27');
    await field.press('Enter');
    const strip = page.locator('.verdict-strip');
    await strip.locator('.change').first().waitFor(patient);
    await expect.poll(() => textOf(strip)).toContain('safe to say → don’t say');
    await expect.poll(() => textOf(strip), patient).toMatch(/\d+ safe to say, .*\d+ don’t say/);
    await openSentences();
    await expect.poll(() => stateOf('vacuum-gain')).not.toBe(was);
    await expect.poll(() => textOf(sentence('vacuum-gain'))).toContain('Changed by the last edit');
    await page.keyboard.press('Control+z');
    await expect.poll(() => stateOf('vacuum-gain'), patient).toBe(was);
  });

  it('are added, changed and removed in the page; a wrong test is told beside its field first', async () => {
    await keepSentences('vacuum-gain', 'always-better');
    await open();
    await openSentences();
    const original = await onDisk();
    await page.getByRole('button', { name: 'Add a sentence' }).click();
    const words = page.getByLabel('Words to be said');
    await expect.poll(() => words.evaluate((element) => element === document.activeElement)).toBe(true);
    await words.fill('The bell burns more than a ton in four seconds.');
    const test = page.getByLabel('Test that decides them');
    await test.fill('bell.massFlow > 1 bar');
    const fault = page.locator('.editor .fault');
    await fault.waitFor();
    await expect.poll(() => textOf(fault)).toMatch(/At sign \d+.*pressure/);
    await expect.poll(() => test.getAttribute('aria-invalid')).toBe('true');
    await expect.poll(() => page.getByRole('button', { name: 'Keep in the study' }).isDisabled()).toBe(true);
    await expect.poll(() => onDisk()).toBe(original);
    await expect.poll(() => axeFindings('editor')).toEqual([]);
    await test.fill('bell.massFlow * 4 s > 1000 kg');
    await fault.waitFor({ state: 'detached' });
    await test.fill('bell.massFlow > 225 kg/s');
    const provisional = page.locator('.editor .draft-verdict');
    await expect.poll(() => textOf(provisional), patient).toMatch(/Safe to say.*provisional/);
    await expect.poll(() => onDisk()).toBe(original);
    await expect.poll(() => axeFindings('a provisional verdict')).toEqual([]);
    await page.getByRole('button', { name: 'Keep in the study' }).click();
    await expect.poll(onDisk).toContain('bell.massFlow > 225 kg/s');
    const added = sentence('bell-burns-more-than');
    await expect.poll(() => textOf(added), patient).toContain('Safe to say');
    const comments = original.split('\n').filter((line) => line.trim().startsWith('#'));
    for (const comment of comments) await expect.poll(() => onDisk()).toContain(comment);

    await added.getByRole('button', { name: /^The bell burns/ }).click();
    await added.getByRole('button', { name: 'Change words or test' }).click();
    await page.getByLabel(/^Meant to be said/).uncheck();
    await page.getByRole('button', { name: 'Keep in the study' }).click();
    await expect.poll(onDisk).toMatch(/bell-burns-more-than[^-]*\n {4}said: false\n/);

    await added.getByRole('button', { name: 'Change words or test' }).click();
    await page.getByRole('button', { name: 'Remove' }).click();
    await expect.poll(onDisk).not.toContain('bell-burns-more-than');
  });
});

describe('what no computation decides', () => {
  it('stands beside the sentences with its source, marked as reported', async () => {
    const facts = [
      'facts:',
      '  - id: first-book',
      '    say: The book on flow separation appeared in 1973.',
      '    sources: [separation-1973]',
      '',
    ];
    await keepSentences('vacuum-gain');
    await writeStudy(`${await onDisk()}\n${facts.join('\n')}`);
    await open();
    await openSentences();
    const fact = page.locator('.sentence', { hasText: 'appeared in 1973' });
    await expect.poll(() => textOf(fact)).toMatch(/Reported, not computed.*Source: R\. H\. Schmucker/);
    await expect.poll(() => axeFindings('facts')).toEqual([]);
  });
});
