/** Inputs of two engines: sliders, locked together, copied, taken back; each an edit of the study file that can be undone. */

import { beforeEach, describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import {
  answered,
  axeFindings,
  ledgerNumbers,
  onDisk,
  open,
  page,
  patient,
  useWorkbench,
  withoutSentences,
} from './studyPage.ts';

useWorkbench();
beforeEach(withoutSentences);

const field = (input: string) => page.locator(`input[id="field-engines.${input}"]`);
const sliderOf = (engine: string, label: string) =>
  page.getByRole('slider', { name: `${engine}, ${label}, slider` });
const undo = () => page.getByRole('button', { name: 'Undo', exact: true });
const tool = (name: RegExp) => page.getByRole('button', { name });

interface Written {
  readonly engines: Readonly<Record<string, Readonly<Record<string, Readonly<Record<string, unknown>>>>>>;
}
const engines = async () => (parse(await onDisk()) as Written).engines;
/** What the file states of an engine itself. */
const stated = async (engine: string, section: string, key: string) =>
  (await engines())[engine]?.[section]?.[key];

describe('the slider of an input', () => {
  it('shows while it is dragged, is written when let go, and is one step to undo', async () => {
    await open();
    // What is still to come would move the slider.
    await answered();
    const original = await onDisk();
    const slider = sliderOf('Alder B', 'Chamber pressure');
    expect(await slider.getAttribute('aria-valuetext')).toBe('100 bar');
    await slider.scrollIntoViewIfNeeded();
    const box = await slider.boundingBox();
    if (box === null) throw new Error('The slider has no place.');
    const y = box.y + box.height / 2;
    const at = Number(await slider.inputValue()) / Number(await slider.getAttribute('max'));
    await page.mouse.move(box.x + 7 + at * (box.width - 14), y);
    const before = await ledgerNumbers();
    await page.mouse.down();
    for (const share of [0.75, 0.8, 0.85]) await page.mouse.move(box.x + share * box.width, y);
    const shownNow = () => field('bell.chamber.pressure').inputValue();
    await expect.poll(async () => Number.parseFloat(await shownNow())).toBeGreaterThan(150);
    // The numbers follow before anything is written.
    await expect.poll(ledgerNumbers, patient).not.toEqual(before);
    expect(await onDisk()).toBe(original);
    await page.mouse.up();
    const shown = await shownNow();
    expect(shown).toMatch(/^\d+ bar$/);
    await expect.poll(onDisk, patient).toBe(original.replace('pressure: 100 bar', `pressure: ${shown}`));
    await expect
      .poll(() => undo().getAttribute('title'), patient)
      .toBe(`Undo: Alder B, chamber pressure: ${shown}`);
    await undo().click();
    await expect.poll(onDisk, patient).toBe(original);
    await expect.poll(() => slider.getAttribute('aria-valuetext'), patient).toBe('100 bar');
    await expect.poll(() => undo().isDisabled(), patient).toBe(true);
  });

  it('goes by keys, over equal ratios where the range is wide', async () => {
    await open({ haste: 20 });
    const original = await onDisk();
    const slider = sliderOf('Alder P', 'Area ratio');
    await slider.focus();
    await page.keyboard.press('ArrowRight');
    await expect.poll(() => slider.getAttribute('aria-valuetext'), patient).toBe('61');
    await expect.poll(onDisk, patient).toContain('areaRatio: 61,');
    await page.keyboard.press('Home');
    await expect.poll(onDisk, patient).toContain('areaRatio: 5,');
    await undo().click();
    await expect.poll(onDisk, patient).toBe(original);
  });
});

describe('two engines side by side', () => {
  it('let what differs stand out, and show it alone', async () => {
    await open();
    const line = (label: string) => page.locator('.inputs tbody tr', { hasText: label }).first();
    await expect.poll(() => line('Area ratio').getAttribute('class')).toBe('differs');
    await expect.poll(() => line('Chamber pressure').getAttribute('class')).toBe('same');
    await expect.poll(() => line('Bell length').getAttribute('class')).toBe('one');
    await expect.poll(() => axeFindings('inputs')).toEqual([]);
    await tool(/^Only what differs/).click();
    await expect.poll(() => line('Chamber pressure').count()).toBe(0);
    await expect.poll(() => line('Area ratio').count()).toBe(1);
  });

  it('copied from the other, taken back to what the file said when opened', async () => {
    await open();
    await field('plug.chamber.pressure').fill('120 bar');
    await field('plug.chamber.pressure').press('Enter');
    await expect.poll(() => stated('plug', 'chamber', 'pressure'), patient).toBe('120 bar');
    await field('plug.chamber.pressure').hover();
    await tool(/^Chamber pressure: Copy 120 bar of Alder P to Alder B/).click();
    await expect.poll(() => stated('bell', 'chamber', 'pressure'), patient).toBe('120 bar');
    await expect.poll(() => field('bell.chamber.pressure').inputValue(), patient).toBe('120 bar');
    await field('plug.chamber.pressure').hover();
    await tool(
      /^Take chamber pressure back to Alder B 100 bar, Alder P 100 bar of the engine that this one is like/,
    ).click();
    // Both at once: its own pressure is gone from the plug, which has that of the bell again.
    await expect.poll(() => stated('bell', 'chamber', 'pressure'), patient).toBe('100 bar');
    expect(await stated('plug', 'chamber', 'pressure')).toBeUndefined();
    await undo().click();
    await expect.poll(() => stated('plug', 'chamber', 'pressure'), patient).toBe('120 bar');
    expect(await stated('bell', 'chamber', 'pressure')).toBe('120 bar');
  });

  it('locked together, change together: in one step, and still after the page is loaded anew', async () => {
    await open();
    await field('bell.nozzle.areaRatio').hover();
    const lock = tool(/^Lock area ratio of both together/);
    await lock.click();
    await expect.poll(() => lock.getAttribute('aria-pressed')).toBe('true');
    await field('bell.nozzle.areaRatio').fill('40');
    await field('bell.nozzle.areaRatio').press('Enter');
    await expect.poll(() => stated('plug', 'nozzle', 'areaRatio'), patient).toBe(40);
    expect(await stated('bell', 'nozzle', 'areaRatio')).toBe(40);
    await expect
      .poll(() => undo().getAttribute('title'), patient)
      .toBe('Undo: Alder B and Alder P, area ratio: 40');
    await page.reload();
    await page.locator('.input-tools.locked').waitFor();
    // The plug takes its efficiency from the bell: what is locked is written where it stands.
    await field('plug.chamber.efficiency').hover();
    await tool(/^Lock efficiency of both together/).click();
    await field('plug.chamber.efficiency').fill('96 %');
    await field('plug.chamber.efficiency').press('Enter');
    await expect.poll(() => stated('bell', 'chamber', 'efficiency'), patient).toBe('96 %');
    expect(await stated('plug', 'chamber', 'efficiency')).toBeUndefined();
    await answered();
  });
});
