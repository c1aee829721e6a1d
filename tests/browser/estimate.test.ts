/** What an input does is on screen at once as a first estimate, marked, and gives way to what a fresh solve says. */

import { describe, expect, it } from 'vitest';
import {
  answered,
  ledgerText,
  ledgerNumbers as numbers,
  onDisk,
  open,
  page,
  patient,
  ready,
  textOf,
  textsSeen,
  useWorkbench,
  withoutSentences,
} from './studyPage.ts';

useWorkbench();

const field = (input: string) => page.locator(`input[id="field-engines.${input}"]`);
const firstNumber = async () => (await numbers())[0];
/** Estimates go out from what was answered in full. */
const openAnswered = async () => {
  await open();
  await answered();
};
const facts = () => page.locator('.engine-name').allTextContents();

/** From now on, every text that the head, the ledger and the names of the engines show. */
const watch = () => textsSeen('header [role=status], table.ledger, .engine-name');

describe('a first estimate', () => {
  it('follows what is being written, marked, writes nothing, and is gone with it', async () => {
    await openAnswered();
    const [before, file] = [await numbers(), await onDisk()];
    await field('bell.chamber.pressure').fill('120 bar');
    await expect.poll(ledgerText).toContain('≈');
    await expect
      .poll(facts)
      .toEqual([
        expect.stringContaining('first estimate, catching up'),
        expect.stringContaining('first estimate, catching up'),
      ]);
    // The short answer is still that of the study before, and is told so.
    await expect.poll(() => textOf(page.locator('.answer'))).toMatch(/^As it was before: /);
    await expect.poll(firstNumber).toMatch(/^≈/);
    const told = await firstNumber();
    expect(told).not.toContain(before[0]);
    await expect
      .poll(() => textOf(page.locator('header [role=status]')))
      .toBe('first estimate; not written yet');
    // Half a word leaves the last estimate in sight; no verdict is made of either.
    await field('bell.chamber.pressure').fill('120 b');
    await expect.poll(() => textOf(page.locator('.verdict-strip [role=status]'))).toBe('being checked …');
    expect(await firstNumber()).toBe(told);
    await field('bell.chamber.pressure').press('Escape');
    await expect.poll(numbers).toEqual(before);
    expect(await onDisk()).toBe(file);
  });

  it('comes with an edit and is replaced by what a fresh solve says', async () => {
    await withoutSentences();
    await openAnswered();
    const seen = await watch();
    await field('bell.nozzle.areaRatio').fill('27');
    await field('bell.nozzle.areaRatio').press('Enter');
    await expect.poll(onDisk).toContain('areaRatio: 27');
    await answered();
    await expect.poll(ledgerText, patient).not.toContain('≈');
    const settled = await numbers();
    expect((await seen()).some((text) => text.includes('≈'))).toBe(true);
    await expect.poll(async () => (await facts())[0]).toContain('area ratio 27');
    await page.reload();
    await ready();
    await expect.poll(numbers).toEqual(settled);
  });

  it('cuts a plug elsewhere at once, and draws it so', async () => {
    await withoutSentences();
    await openAnswered();
    const before = await numbers();
    await field('plug.nozzle.kept').fill('40 %');
    await expect
      .poll(facts)
      .toEqual([expect.anything(), expect.stringContaining('first estimate, catching up')]);
    // At the pad the longer plug is pushed harder; the bell is as it was.
    const ofPlug = (all: readonly string[]) => Number(/\d+\.\d/.exec(all[1] ?? '')?.[0]);
    await expect.poll(async () => ofPlug(await numbers())).toBeGreaterThan(ofPlug(before) + 3);
    const told = await numbers();
    expect(told[0]).toBe(before[0]);
    await field('plug.nozzle.kept').press('Enter');
    await expect.poll(onDisk).toContain('kept: 40 %');
    await answered();
    await expect.poll(ledgerText, patient).not.toContain('≈');
    // Below a part in a thousand, as the method's page says.
    expect(Math.abs(ofPlug(told) / ofPlug(await numbers()) - 1)).toBeLessThan(1e-3);
  });

  it('says that the answer follows where only the full one can tell', async () => {
    await withoutSentences();
    await openAnswered();
    const seen = await watch();
    await page.locator('select[id="field-engines.plug.nozzle.kind"]').selectOption('ideal');
    await expect.poll(onDisk).toMatch(/^ {4}nozzle: .*kind: ideal/m);
    await answered();
    const texts = await seen();
    expect(texts.some((text) => text.includes('as it was; the answer follows'))).toBe(true);
    // Its numbers are marked as those of before, what parts the two with them; nothing is called an estimate.
    const meanwhile = texts.filter((text) => text.includes('as it was; the answer follows'));
    expect(meanwhile.some((text) => /before: \d{3}\.\d.s/.test(text))).toBe(true);
    expect(meanwhile.some((text) => text.includes('before: Alder P'))).toBe(true);
    expect(texts.some((text) => text.includes('as it was before; '))).toBe(true);
    expect(texts.every((text) => !text.includes('first estimate'))).toBe(true);
    expect(texts.every((text) => !text.includes('≈'))).toBe(true);
  });

  it('is of the last of many moves, and so is the answer', async () => {
    await withoutSentences();
    await openAnswered();
    const seen = await watch();
    const pressure = field('bell.chamber.pressure');
    await pressure.focus();
    for (let i = 0; i < 12; i++) await page.keyboard.press('ArrowUp');
    await expect.poll(onDisk).toContain('pressure: 112 bar');
    await answered();
    await expect.poll(ledgerText, patient).not.toContain('≈');
    expect((await seen()).some((text) => text.includes('≈'))).toBe(true);
    const settled = await numbers();
    await page.reload();
    await ready();
    await expect.poll(numbers).toEqual(settled);
  });
});
