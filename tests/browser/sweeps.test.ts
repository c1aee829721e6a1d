/** A sweep tried out: a chart, a flight over time, a map; kept in the study. */

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
} from './studyPage.ts';

useWorkbench();

describe('a sweep tried out', () => {
  beforeEach(withoutSentences);
  it('follows a quantity against an input, refines, and tells what it found', async () => {
    await open();
    await number('Alder B, specific impulse').first().click();
    await page.getByRole('button', { name: 'Sweep against …' }).click();
    // A number read at the pad is followed at the pad.
    const at = page.getByRole('combobox', { name: /^at/ });
    await expect.poll(() => at.inputValue()).toBe('pad');
    await at.selectOption('vacuum');
    const chart = page.locator('.sweep-chart');
    await chart.waitFor(patient);
    await page.locator('.sweep-chart:not(.provisional)').waitFor(patient);
    const findings = () => textOf(page.locator('.findings'));
    // In vacuum a larger area ratio gives more, without an end.
    const rises =
      /Alder B in vacuum rises from ([\d.]+)\s?s at area ratio 5 to ([\d.]+)\s?s at area ratio 100\./;
    await expect.poll(findings, patient).toMatch(rises);
    const [, low = '', high = ''] = rises.exec(await findings()) ?? [];
    expect(Number(high)).toBeGreaterThan(Number(low));
    await expect.poll(() => axeFindings('sweep')).toEqual([]);
    await page.getByRole('combobox', { name: /^against/ }).selectOption('propellants.ratio');
    await expect.poll(findings, patient).toMatch(/Alder B in vacuum is highest at mixture ratio 3\.\d/);
    await page.getByRole('button', { name: 'Keep in the study' }).click();
    await expect
      .poll(onDisk)
      .toMatch(
        /\n {2}- id: specificImpulse-propellants-ratio\n {4}of: \[bell\.specificImpulse\(vacuum\), plug\.specificImpulse\(vacuum\)\]\n/,
      );
    const show = page.getByRole('combobox', { name: /^Show/ });
    await expect.poll(() => show.inputValue()).toBe('specificImpulse-propellants-ratio');
    await expect.poll(findings, patient).toMatch(/Alder B in vacuum is highest at mixture ratio 3\.\d/);
    await show.selectOption('');
    await page.getByRole('combobox', { name: /^Follow/ }).selectOption('plug.leastWall');
    await page.getByRole('combobox', { name: /^Follow/ }).selectOption('throat.diameter');
    await chart.waitFor(patient);
  });

  it('takes its ends either way round, in any unit, and follows a flight over time', async () => {
    await open();
    await page.getByRole('tab', { name: 'Sweeps' }).click();
    const show = page.getByRole('combobox', { name: /^Show/ });
    await show.selectOption('');
    await page.getByLabel('Sweep from').fill('40');
    await page.getByLabel('Sweep from').press('Tab');
    await page.getByLabel('Sweep to').fill('10');
    await page.getByLabel('Sweep to').press('Tab');
    await expect.poll(() => textOf(page.locator('.sweeps'))).toContain('Taken from 10 to 40.');
    await expect
      .poll(() => textOf(page.locator('.findings')), patient)
      .toMatch(/rises from [\d.]+\s?s at area ratio 10 to [\d.]+\s?s at area ratio 40\./);
    await page.getByLabel('Sweep to').fill('3 bar');
    await page.getByLabel('Sweep to').press('Tab');
    await expect.poll(() => textOf(page.locator('.sweeps .fault'))).toMatch(/is expected/);
    await page.getByRole('combobox', { name: /^Follow/ }).selectOption('flight.points.speed');
    const against = page.getByRole('combobox', { name: /^against/ });
    await expect.poll(() => textOf(against)).toBe('time since lift-off');
    await page.getByLabel('Sweep to').fill('1 min');
    await page.getByLabel('Sweep to').press('Tab');
    await expect
      .poll(() => textOf(page.locator('.findings')), patient)
      .toMatch(/Alder booster.* rises from 0\s?m\/s at .*0\s?s to [\d.]+\s?m\/s at .*(60\s?s|1\s?min)/);
  });

  it('becomes a map with a second input, which can be stopped, and kept in the study', async () => {
    await open();
    await number('Alder B, specific impulse').first().click();
    await page.getByRole('button', { name: 'Sweep against …' }).click();
    await page.getByRole('combobox', { name: /^at/ }).selectOption('vacuum');
    await page.locator('.sweep-chart').waitFor(patient);
    await page.getByRole('combobox', { name: /^and/ }).selectOption('chamber.pressure');
    await page.getByRole('button', { name: 'Stop' }).click();
    await expect.poll(() => page.getByRole('button', { name: 'Stop' }).count()).toBe(0);
    await page.getByRole('combobox', { name: /^of/ }).selectOption('plug');
    await expect.poll(() => page.locator('.sweep-chart .levels path').count(), patient).toBeGreaterThan(2);
    await expect.poll(() => axeFindings('map')).toEqual([]);
    await page.getByRole('button', { name: 'Keep in the study' }).click();
    await expect
      .poll(onDisk)
      .toMatch(
        /maps:\n {2}- id: specificImpulse-nozzle-areaRatio-chamber-pressure\n {4}of: plug\.specificImpulse\(vacuum\)\n {4}across: \{ over: nozzle\.areaRatio \}\n {4}up: \{ over: chamber\.pressure \}\n/,
      );
  });
});
