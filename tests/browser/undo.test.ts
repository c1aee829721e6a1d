/** What is in the study can be taken back; two windows on one study do not fight. */

import { beforeEach, describe, expect, it } from 'vitest';
import {
  context,
  forgive,
  onDisk,
  open,
  page,
  patient,
  ready,
  server,
  textOf,
  useWorkbench,
  withoutSentences,
  writeStudy,
} from './studyPage.ts';

useWorkbench();
beforeEach(withoutSentences);

const field = (input: string, on = page) => on.locator(`input[id="field-engines.${input}"]`);
const status = (on = page) => textOf(on.locator('header [role=status]'));
const write = async (input: string, value: string, on = page) => {
  await field(input, on).fill(value);
  await field(input, on).press('Enter');
  await expect.poll(onDisk).toContain(value);
};

describe('undo and redo', () => {
  it('says what it takes back; a run of arrow keys is one step; sentences count too', async () => {
    await open({ haste: 20 });
    const original = await onDisk();
    await field('bell.chamber.pressure').focus();
    for (let i = 0; i < 3; i++) {
      await page.keyboard.press('ArrowUp');
      await expect.poll(onDisk).toContain(`${101 + i} bar`);
    }
    const stepped = await onDisk();
    await page.getByRole('tab', { name: 'Sentences' }).click();
    await page.getByRole('button', { name: 'Add a sentence' }).click();
    await page.getByLabel('Words to be said').fill('The bell is a bell.');
    await page.getByRole('button', { name: 'Keep in the study' }).click();
    await expect.poll(onDisk).toContain('The bell is a bell.');
    const undo = page.getByRole('button', { name: 'Undo' });
    await expect.poll(() => undo.getAttribute('title')).toBe('Undo: a sentence added');
    await page.getByRole('slider', { name: 'Altitude' }).focus();
    await page.keyboard.press('Control+z');
    await expect.poll(onDisk).toBe(stepped);
    await expect.poll(() => undo.getAttribute('title')).toBe('Undo: Alder B, chamber pressure: 103 bar');
    await page.keyboard.press('Control+z');
    await expect.poll(onDisk).toBe(original);
    await expect.poll(status, patient).toBe('Taken back: Alder B, chamber pressure: 103 bar');
    await expect.poll(() => undo.isDisabled()).toBe(true);
    await page.keyboard.press('Control+Shift+z');
    await expect.poll(onDisk).toBe(stepped);
  });

  it('shows what stands there where an edit is taken back before its answer has come', async () => {
    await open();
    const original = await onDisk();
    await write('bell.chamber.pressure', '125 bar');
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(onDisk).toBe(original);
    await expect.poll(() => field('bell.chamber.pressure').inputValue(), patient).toBe('100 bar');
    await expect.poll(status, patient).toBe('Taken back: Alder B, chamber pressure: 125 bar');
  });

  it('takes up a change of the file as a step of its own', async () => {
    await open();
    const original = await onDisk();
    await write('bell.chamber.pressure', '130 bar');
    const mine = await onDisk();
    await writeStudy(mine.replace(/^question:.*$/m, 'question: Which of the two?'));
    await expect.poll(() => textOf(page.locator('h1'))).toBe('Which of the two?');
    const undo = page.getByRole('button', { name: 'Undo' });
    await expect.poll(() => undo.getAttribute('title')).toBe('Undo: a change made elsewhere');
    await undo.click();
    await expect.poll(onDisk).toBe(mine);
    await undo.click();
    await expect.poll(onDisk).toBe(original);
  });
});

describe('two windows on one study', () => {
  it('show each other’s edits, keep both, and ask where both changed the same', async () => {
    await open();
    const second = await context.newPage();
    await second.goto(server.url);
    await ready(second);
    await write('bell.chamber.pressure', '130 bar');
    // Each works out what the other has written.
    await expect.poll(() => field('bell.chamber.pressure', second).inputValue(), patient).toBe('130 bar');
    await write('plug.nozzle.areaRatio', '50', second);
    await expect.poll(() => field('plug.nozzle.areaRatio').inputValue(), patient).toBe('50');
    await expect.poll(() => onDisk()).toContain('130 bar');

    // What is being typed is not swept away.
    await field('bell.chamber.pressure').fill('140 bar');
    await write('bell.chamber.pressure', '120 bar', second);
    await expect
      .poll(() => textOf(page.locator('.fault-line')), patient)
      .toContain('This became 120 bar meanwhile');
    await expect.poll(() => field('bell.chamber.pressure').inputValue()).toBe('140 bar');
    await field('bell.chamber.pressure').press('Escape');
    await expect.poll(() => field('bell.chamber.pressure').inputValue()).toBe('120 bar');

    // Both at once, before either window can hear of the other.
    await page.route('**/api/changes', (route) => route.abort());
    await page.route('**/api/study', async (route) => {
      if (route.request().method() === 'PUT') {
        await page.unroute('**/api/study');
        await writeStudy((await onDisk()).replace('120 bar', '90 bar'));
      }
      await route.continue();
    });
    await field('bell.chamber.pressure').fill('150 bar');
    await field('bell.chamber.pressure').press('Enter');
    const asked = page.getByRole('alertdialog');
    await asked.waitFor();
    await expect.poll(() => onDisk()).toContain('90 bar');
    await asked.getByRole('button', { name: 'Write mine' }).click();
    await expect.poll(onDisk).toContain('150 bar');
    await asked.waitFor({ state: 'detached' });
    forgive(/409|ERR_FAILED/);
  });
});
