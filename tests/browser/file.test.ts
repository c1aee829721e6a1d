/** The study's file: an input is written into it, and what others write is taken up. */

import { rm } from 'node:fs/promises';
import { beforeEach, describe, expect, it } from 'vitest';
import {
  answered,
  forgive,
  ledgerNumbers,
  ledgerText,
  onDisk,
  open,
  page,
  patient,
  ready,
  studyFile,
  textOf,
  useWorkbench,
  withoutSentences,
  writeStudy,
} from './studyPage.ts';

useWorkbench();

describe('editing', () => {
  beforeEach(withoutSentences);
  it('writes an input to the file, keeps the comments, and can be undone', async () => {
    await open();
    await answered();
    const original = await onDisk();
    const comments = original.split('\n').filter((line) => line.trim().startsWith('#'));
    expect(comments.length).toBeGreaterThan(0);
    const first = await ledgerNumbers();
    const field = page.locator('input[id^="field-"][id$="chamber.pressure"]').first();
    const before = await field.inputValue();
    await field.fill('130 bar');
    await field.press('Enter');
    await expect.poll(onDisk).toContain('130 bar');
    // The first estimate is marked; what stays is the full answer.
    await answered();
    await expect.poll(ledgerText, patient).not.toContain('≈');
    await expect.poll(ledgerNumbers).not.toEqual(first);
    const written = await onDisk();
    for (const comment of comments) expect(written).toContain(comment);

    const changed = await ledgerNumbers();
    await page.reload();
    await ready();
    await expect
      .poll(() => page.locator('input[id^="field-"][id$="chamber.pressure"]').first().inputValue())
      .toBe('130 bar');
    await expect.poll(ledgerNumbers, patient).toEqual(changed);

    // the history belongs to the visit; make one more edit and take it back
    const again = page.locator('input[id^="field-"][id$="chamber.pressure"]').first();
    await again.fill(before);
    await again.press('Enter');
    await expect.poll(onDisk).not.toContain('130 bar');
    await expect.poll(ledgerNumbers, patient).toEqual(first);
    // While it is being written, the key would be the field's own.
    await expect.poll(() => again.getAttribute('data-changed')).toBe('false');
    await page.keyboard.press('Control+z');
    await expect.poll(onDisk).toBe(written);
    await expect.poll(ledgerNumbers, patient).toEqual(changed);
    await page.keyboard.press('Control+Shift+z');
    await expect.poll(ledgerNumbers, patient).toEqual(first);
  });

  it('steps an input with the arrow keys', async () => {
    await open();
    const field = page.locator('input[id^="field-"][id$="chamber.pressure"]').first();
    const before = Number.parseFloat(await field.inputValue());
    await field.focus();
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('ArrowUp');
    await expect.poll(onDisk).toContain(`${before + 2} bar`);
  });

  it('refuses a wrong pressure in place', async () => {
    await open();
    const original = await onDisk();
    const field = page.locator('input[id^="field-"][id$="chamber.pressure"]').first();
    for (const wrong of ['-5 bar', '100 bananas', 'many', '12 m']) {
      await field.fill(wrong);
      await field.press('Enter');
      const fault = page.locator('.inputs .fault').first();
      await fault.waitFor();
      await expect.poll(() => field.getAttribute('aria-invalid'), { message: wrong }).toBe('true');
      await expect.poll(async () => (await textOf(fault)).length).toBeGreaterThan(20);
      await expect.poll(() => onDisk()).toBe(original);
      await field.press('Escape');
      await expect.poll(() => field.getAttribute('aria-invalid')).toBe('false');
      await expect.poll(() => page.locator('.inputs .fault').count()).toBe(0);
    }
  });

  it('takes up a change made elsewhere, also a broken one', async () => {
    await open();
    const original = await onDisk();
    const question = 'Which of the two would you take?';
    await writeStudy(original.replace(/^question:.*$/m, `question: ${question}`));
    await expect.poll(() => textOf(page.locator('h1'))).toBe(question);

    await writeStudy(`${original}\n  broken: [`);
    await page.locator('.faults').waitFor();
    await expect.poll(() => textOf(page.locator('.faults'))).toMatch(/line \d+, column \d+/);
    const status = page.locator('header [role=status]');
    await expect
      .poll(() => textOf(status))
      .toMatch(/^study\.yaml has (a fault|faults); shown as it was before$/);
    // the last good picture stays
    await expect.poll(() => page.locator('.stage svg').count()).toBeGreaterThan(0);

    await writeStudy(original);
    await page.locator('.faults').waitFor({ state: 'detached' });

    // A wrong value is told beside its field too.
    await writeStudy(original.replace('pressure: 100 bar', 'pressure: many bars'));
    const field = page.locator('input[id="field-engines.bell.chamber.pressure"]');
    await expect.poll(() => field.getAttribute('aria-invalid')).toBe('true');
    await expect
      .poll(() => textOf(page.locator('.fault-line')))
      .toMatch(/^Alder B: in study\.yaml, .*many bars/);
    await writeStudy(original);
    await page.locator('.faults').waitFor({ state: 'detached' });
    await expect.poll(() => field.getAttribute('aria-invalid')).toBe('false');

    await rm(studyFile());
    await page.locator('.faults').waitFor();
    await expect.poll(() => textOf(page.locator('.faults'))).toMatch(/^study\.yaml cannot be read now/);
    await expect.poll(() => textOf(status)).toBe('study.yaml cannot be read now; shown as it was before');
    await writeStudy(original);
    await page.locator('.faults').waitFor({ state: 'detached' });
    // The server says so of the file that is not there; the browser logs the refused reading.
    forgive(/status of 422/);
  });
});

describe('an edit while the file changes elsewhere', () => {
  beforeEach(withoutSentences);
  it('is made on the new text, and both changes stand', async () => {
    await open();
    const original = await onDisk();
    // No change is announced in time: the page finds out only when it writes.
    forgive(/409|ERR_FAILED/);
    await page.route('**/api/changes', (route) => route.abort());
    await page.reload();
    await ready();
    await writeStudy(original.replace(/^question:.*$/m, 'question: Which one?'));
    const field = page.locator('input[id="field-engines.bell.chamber.pressure"]');
    await field.fill('130 bar');
    await field.press('Enter');
    await expect.poll(onDisk).toContain('130 bar');
    await expect.poll(() => onDisk()).toContain('question: Which one?');
    await expect.poll(() => textOf(page.locator('h1')), patient).toBe('Which one?');
  });
});
