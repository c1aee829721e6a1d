/** Finer fields where one looks, by the graphics processor: here by shaders run in software. */

import { join } from 'node:path';
import { expect, it } from 'vitest';
import { flowOfText } from '../../src/faces/flows/flowText.ts';
import { coldCone, saidOfFlow, useFlowCache } from './flowPage.ts';
import { axeFindings, open, page, pictures, ready, useWorkbench, writeStudy } from './studyPage.ts';

useWorkbench(['--enable-unsafe-webgpu', '--use-webgpu-adapter=swiftshader']);

useFlowCache();

const finer = () => page.getByRole('button', { name: 'Finer here' });
const soon = { timeout: 300_000, interval: 300 };

/** The cells of the finer field, as the browser keeps them. */
const keptFiner = (): Promise<string | null> =>
  page.evaluate(
    () =>
      new Promise<string | null>((resolve) => {
        const opening = indexedDB.open('plumeline-flow');
        opening.onerror = () => resolve(null);
        opening.onsuccess = () => {
          const store = opening.result.transaction('cells').objectStore('cells');
          const keys = store.getAllKeys();
          keys.onsuccess = () => {
            const key = keys.result.find((each) => typeof each === 'string' && each.endsWith('-fine'));
            if (key === undefined) return resolve(null);
            const cells = store.get(key);
            cells.onsuccess = () => resolve((cells.result as { text: string }).text);
          };
        };
      }),
  );

it('is chosen where the machine has one, computed from the server’s field, shown, named and kept', async ({
  skip,
}) => {
  await writeStudy(coldCone);
  await open();
  const has = await page.evaluate(async () => (await navigator.gpu?.requestAdapter()) != null);
  if (!has) skip('this Chromium has no WebGPU adapter, not even one in software');
  await page.getByRole('button', { name: 'Whole flow' }).click();
  await expect.poll(saidOfFlow, soon).toContain('Cold: inviscid, computed in air of');
  // Shaders in software would be slower than the server: they are not offered unless asked for.
  expect(await finer().count()).toBe(0);
  await page.evaluate(() => localStorage.setItem('plumeline-finer-by', 'software'));
  await page.reload();
  await ready();
  await expect.poll(() => finer().count(), soon).toBe(1);
  expect(await finer().getAttribute('aria-pressed')).toBe('true');
  await expect.poll(saidOfFlow, soon).toContain('finer, by the graphics processor of this machine');
  await expect.poll(() => axeFindings('with a finer field'), soon).toEqual([]);
  await page.screenshot({ path: join(pictures, 'finer-flow.png') });
  await expect.poll(keptFiner, soon).not.toBeNull();
  const field = flowOfText((await keptFiner())!);
  expect(field.kernel).toBe('graphics processor');
  expect(field.fineness).toBe('fine');
  // Thrust as by the nozzle’s own model, the field of characteristics.
  const { mean, byModel } = field.thrustCoefficient;
  expect(Math.abs(mean / byModel! - 1)).toBeLessThan(2e-3);
  // Opened again it is there without being computed again, and can be taken back.
  await page.reload();
  await ready();
  await expect.poll(saidOfFlow, soon).toContain('by the graphics processor');
  await finer().click();
  await expect.poll(() => finer().getAttribute('aria-pressed')).toBe('false');
  await expect.poll(saidOfFlow, soon).not.toContain('graphics processor');
  // That is remembered.
  await page.reload();
  await ready();
  await expect.poll(() => finer().count(), soon).toBe(1);
  expect(await finer().getAttribute('aria-pressed')).toBe('false');
}, 600_000);
