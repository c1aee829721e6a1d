/** The whole flow over the engines cut open: computed in the background, the nearest field shown and named, kept in the browser. */

import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { coldCone, saidOfFlow, useFlowCache } from './flowPage.ts';
import {
  axeFindings,
  open,
  page,
  pictures,
  ready,
  slider,
  studyFile,
  textOf,
  textsSeen,
  useWorkbench,
} from './studyPage.ts';

useWorkbench();

useFlowCache();

/** Perfect gas through a short cone, and a bound without walls: a field takes about a second. */
const study = `${coldCone}  bound: { like: cold, name: Bound, nozzle: { kind: adapting, areaRatio: 10 } }
`;

/** Pixels of the picture that are drawn at all. */
const drawn = (): Promise<number> =>
  page.locator('.canvas.flow canvas').evaluate((element) => {
    const canvas = element as HTMLCanvasElement;
    const { width, height } = canvas;
    const pen = new OffscreenCanvas(width, height).getContext('2d', { willReadFrequently: true });
    pen?.drawImage(canvas, 0, 0);
    const data = pen?.getImageData(0, 0, width, height).data ?? [];
    let count = 0;
    for (let i = 3; i < data.length; i += 4) if (data[i]! > 128) count += 1;
    return count;
  });
const keptInBrowser = (): Promise<number> =>
  page.evaluate(
    () =>
      new Promise<number>((resolve) => {
        const opening = indexedDB.open('plumeline-flow');
        opening.onsuccess = () => {
          const shelf = opening.result;
          if (!shelf.objectStoreNames.contains('cells')) return resolve(0);
          const count = shelf.transaction('cells').objectStore('cells').count();
          count.onsuccess = () => resolve(count.result);
        };
        opening.onerror = () => resolve(0);
      }),
  );
const soon = { timeout: 240_000, interval: 200 };

/** Presses Stop the moment that a figure offers it: a field may be there sooner than a hand. @returns what stood beside it */
const stoppedAtOnce = (): Promise<string> =>
  page.evaluate(
    () =>
      new Promise<string>((resolve) => {
        const watching = new MutationObserver(() => {
          const work = document.querySelector('dialog .flow-work');
          const stop = work?.querySelector('button');
          if (!work || stop?.textContent !== 'Stop') return;
          watching.disconnect();
          resolve(work.textContent);
          stop.click();
        });
        watching.observe(document.body, { subtree: true, childList: true, characterData: true });
      }),
  );

describe('the whole flow', () => {
  it('is computed when asked for, shown and named, stopped, kept, and given up where inputs change', async () => {
    await writeFile(studyFile(), study);
    await open();
    expect(await saidOfFlow()).toBe('');
    // What it says until the first field is there may stand for a moment only.
    const seen = await textsSeen('.flow-work');
    const said = await textsSeen('.flow-said');
    await page.getByRole('button', { name: 'Whole flow' }).click();
    await expect
      .poll(saidOfFlow, soon)
      .toContain('Cold: inviscid, computed in air of 1.01\u00a0bar (the pad)');
    await expect.poll(() => textOf(page.locator('.flow-work')), soon).toMatch(/^\d+ of \d+ fields/);
    expect((await seen()).some((text) => text.includes('the first field …'))).toBe(true);
    await expect.poll(saidOfFlow, soon).toContain('No turbulence');
    await expect.poll(drawn, soon).toBeGreaterThan(5000);
    // What has no mesh says so.
    await expect
      .poll(() => textOf(page.locator('.flow-choice')), soon)
      .toContain('The whole flow of Bound is not computed');
    // Some of the climb, then enough.
    await expect
      .poll(() => page.evaluate(() => fetch('/api/flows').then((reply) => reply.json())), soon)
      .toHaveProperty('fields.3');
    // The coarse one stays until the finer one that takes its place is painted.
    await expect.poll(saidOfFlow, soon).toMatch(/\(the pad\)(?!, coarse)/);
    const told = (await said()).slice(1);
    expect(told.map((text) => text.includes('Cold: inviscid'))).toEqual(told.map(() => true));
    await page.getByRole('button', { name: 'Stop' }).click();
    await expect.poll(() => page.locator('.flow-work').count(), soon).toBe(0);
    // The nearest one there is, wherever one looks.
    await slider().focus();
    for (let n = 0; n < 3; n++) await page.keyboard.press('PageUp');
    await expect.poll(saidOfFlow, soon).toMatch(/computed in air of 0\.\d+\u00a0bar \(\d+\u00a0km\)/);
    await page.getByRole('button', { name: 'Streamlines' }).click();
    await expect.poll(drawn, soon).toBeGreaterThan(5000);
    await page.getByRole('button', { name: 'Density change' }).click();
    await expect.poll(saidOfFlow, soon).toContain('by change of density');
    await expect.poll(drawn, soon).toBeGreaterThan(5000);
    const key = () => page.getByRole('img', { name: /^Key to the tint/ }).getAttribute('aria-label');
    await expect.poll(key, soon).toContain('change of density over a lip radius, × 2 to');
    // One way of drawing at a time: key and picture never tell two things.
    const pressed = (name: string) =>
      page.getByRole('button', { name, exact: true }).getAttribute('aria-pressed');
    await expect.poll(() => pressed('Pressure'), soon).toBe('false');
    await page.getByRole('button', { name: 'Speed', exact: true }).click();
    await expect.poll(key, soon).toContain('gas, m/s');
    await expect.poll(() => pressed('Speed'), soon).toBe('true');
    await expect.poll(() => pressed('Density change'), soon).toBe('false');
    await expect.poll(saidOfFlow, soon).not.toContain('by change of density');
    await page.getByRole('button', { name: 'Density', exact: true }).click();
    await expect.poll(key, soon).toContain('kg/m³');
    await expect.poll(() => axeFindings('with the whole flow'), soon).toEqual([]);
    await page.screenshot({ path: join(pictures, 'whole-flow.png') });
    await expect.poll(keptInBrowser, soon).toBeGreaterThan(0);
    // Opened again it stands there without being asked for.
    await page.reload();
    await ready();
    await expect.poll(saidOfFlow, soon).toContain('Cold: inviscid, computed in air of');
    await page.getByRole('button', { name: 'Stop' }).click();
    const field = page.locator('input[id="field-engines.cold.chamber.pressure"]');
    await field.fill('24 bar');
    await field.press('Enter');
    await expect.poll(saidOfFlow, soon).toBe('');
    await page.getByRole('button', { name: 'Whole flow' }).click();
    await expect.poll(() => page.locator('.flow-choice button').count(), soon).toBe(1);
  }, 600_000);

  it('is a figure: computed when one is opened, with a way to stop, kept, and drawn at once the next time', async () => {
    await writeFile(studyFile(), study);
    await open();
    await page.getByRole('tab', { name: 'Figures' }).click();
    const pressure = page.getByRole('button', {
      name: 'The whole flow of Cold, computed without friction: pressure',
    });
    const saidAtStop = stoppedAtOnce();
    await pressure.click();
    expect(await saidAtStop).toContain('is being computed');
    const dialog = page.getByRole('dialog', { name: 'Figure' });
    await expect.poll(() => dialog.getByRole('button', { name: 'Stop' }).count(), soon).toBe(0);
    // What came before the stop may be there already.
    const goOn = dialog.getByRole('button', { name: /Compute it|Go on/ });
    const drawing = dialog.locator('.figure-drawn');
    await expect.poll(async () => (await goOn.count()) + (await drawing.count()), soon).toBeGreaterThan(0);
    if ((await goOn.count()) > 0) await goOn.click();
    await expect.poll(() => drawing.count(), soon).toBe(1);
    await expect
      .poll(() => drawing.getAttribute('aria-label'), soon)
      .toMatch(/^At sea level .* of Cold.*No turbulence/);
    await expect.poll(() => textOf(dialog), soon).toContain('Save its numbers');
    await expect.poll(() => drawing.locator('path').count(), soon).toBeGreaterThan(20);
    await expect.poll(() => axeFindings('figure of a whole flow'), soon).toEqual([]);
    const download = page.waitForEvent('download');
    await dialog.getByRole('button', { name: 'Save its numbers' }).click();
    expect((await download).suggestedFilename()).toMatch(/-flow-cold\.csv$/);
    await page.screenshot({ path: join(pictures, 'whole-flow-figure.png') });
    await page.keyboard.press('Escape');
    await expect.poll(() => dialog.count(), soon).toBe(0);
    // The pad alone was computed, not the climb, and nothing goes on behind a closed figure.
    const list = (): Promise<{ fields: unknown[]; work: { is: string } }> =>
      page.evaluate(() => fetch('/api/flows').then((reply) => reply.json()));
    await expect.poll(async () => (await list()).work.is, soon).toBe('none');
    expect((await list()).fields).toHaveLength(1);
    await page.reload();
    await ready();
    await page.getByRole('tab', { name: 'Figures' }).click();
    await page.getByRole('button', { name: /^The whole flow of Cold: pressure along axis and wall/ }).click();
    await expect.poll(() => drawing.getAttribute('aria-label'), soon).toMatch(/Pressure along the axis/);
    expect((await list()).fields).toHaveLength(1);
  }, 600_000);
});
