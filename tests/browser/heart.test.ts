/** The engines cut open: what the gas is tinted by, small parts drawn larger, and the scale that moves them. */

import { join } from 'node:path';
import type { Locator } from 'playwright-core';
import { beforeEach, describe, expect, it } from 'vitest';
import { RAMPS, rampColour, type Tint } from '../../src/telling/look/flowRamps.ts';
import type { Theme } from '../../src/telling/look/tokens.ts';
import {
  answered,
  axeFindings,
  ledgerNumbers,
  open,
  page,
  pictures,
  slider,
  textOf,
  textsSeen,
  useWorkbench,
  withoutSentences,
} from './studyPage.ts';

useWorkbench();
beforeEach(withoutSentences);

const choose = (name: string) => page.getByRole('button', { name, exact: true }).click();
const cut = () => page.locator('.stage .cut canvas');

/** How many pixels of a canvas have each colour, as `#rrggbb`; half-covered edges left out. */
function coloursOf(canvas: Locator): Promise<Record<string, number>> {
  return canvas.evaluate((element) => {
    const { width, height } = element as HTMLCanvasElement;
    const pen = new OffscreenCanvas(width, height).getContext('2d', { willReadFrequently: true });
    pen?.drawImage(element as HTMLCanvasElement, 0, 0);
    const data = pen?.getImageData(0, 0, width, height).data ?? new Uint8ClampedArray();
    const found: Record<string, number> = {};
    for (let i = 0; i < data.length; i += 4) {
      if (data[i + 3] !== 255) continue;
      const hex = [...data.subarray(i, i + 3)].map((byte) => byte.toString(16).padStart(2, '0')).join('');
      found[`#${hex}`] = (found[`#${hex}`] ?? 0) + 1;
    }
    return found;
  });
}

/** Pixels that have a colour of this ramp: the gas. */
async function tintedBy(tint: Tint, theme: Theme = 'light'): Promise<number> {
  const colours = await coloursOf(cut());
  let sum = 0;
  for (let step = 1; step <= RAMPS[tint].steps; step++) sum += colours[rampColour(tint, step, theme)] ?? 0;
  return sum;
}

const inSight = 5000;

describe('the heart', () => {
  it('is tinted by pressure, Mach number, temperature and speed, each with its key', async () => {
    await open();
    await expect.poll(() => tintedBy('pressure')).toBeGreaterThan(inSight);
    for (const [name, tint, key] of [
      ['Mach', 'mach', 'Mach number'],
      ['Temperature', 'temperature', 'gas, K'],
      ['Speed', 'speed', 'm/s'],
    ] as const) {
      await choose(name);
      await expect.poll(() => tintedBy(tint)).toBeGreaterThan(inSight);
      await expect.poll(() => tintedBy('pressure')).toBe(0);
      await expect
        .poll(() => page.getByRole('img', { name: /^Key to the tint/ }).getAttribute('aria-label'))
        .toContain(key);
    }
    await expect.poll(() => axeFindings('tinted by speed')).toEqual([]);
    await page.screenshot({ path: join(pictures, 'heart-speed.png') });
    await choose('Pressure');
    await expect.poll(() => tintedBy('pressure')).toBeGreaterThan(inSight);
  });

  it('has the colours of the theme, and of paper in print', async () => {
    await open({ dark: true });
    await expect.poll(() => tintedBy('pressure', 'dark')).toBeGreaterThan(inSight);
    await page.emulateMedia({ media: 'print' });
    await expect.poll(() => tintedBy('pressure', 'light')).toBeGreaterThan(inSight);
    await page.emulateMedia({ media: null });
    await expect.poll(() => tintedBy('pressure', 'dark')).toBeGreaterThan(inSight);
  });

  it('moves gas, cursor, words and numbers in the frame of the key', async () => {
    await open();
    // What comes in by itself would move things too.
    await answered();
    await expect.poll(() => tintedBy('pressure')).toBeGreaterThan(inSight);
    await slider().focus();
    const seen = await page.evaluate(async () => {
      const picture = (name: string) =>
        document.querySelector<HTMLCanvasElement>(`.stage .${name} canvas`)?.toDataURL();
      const all = () => ({
        cut: picture('cut'),
        cursor: picture('cursor'),
        bob: document.querySelector<SVGElement>('.plumb > svg')?.style.transform,
        words: document.querySelector('.stage svg.words')?.textContent,
        numbers: document.querySelector('table.ledger')?.textContent,
        air: document.querySelector('.readout.air')?.textContent,
      });
      const before = all();
      const frame = new Promise((resolve) => requestAnimationFrame(resolve));
      document
        .querySelector('[role=slider]')
        ?.dispatchEvent(new KeyboardEvent('keydown', { key: 'PageUp', bubbles: true, cancelable: true }));
      await frame;
      return { before, after: all() };
    });
    for (const part of ['cut', 'cursor', 'bob', 'words', 'numbers', 'air'] as const) {
      expect(seen.before[part], part).toBeTruthy();
      expect(seen.after[part], part).not.toBe(seen.before[part]);
    }
  });

  it('is as sharp as the screen', async () => {
    await open();
    await answered();
    const lacks = () =>
      cut().evaluate((element) => {
        const { width } = element as HTMLCanvasElement;
        return width - Math.round(element.getBoundingClientRect().width * devicePixelRatio);
      });
    await expect.poll(lacks).toBe(0);
  });

  it('draws throat or lip of both engines larger, and takes them away again', async () => {
    await open();
    await choose('Closer: throat');
    const windows = page.locator('.closer');
    await expect.poll(() => windows.count()).toBe(2);
    await expect.poll(() => textOf(windows.first())).toBe('throat, 5 × larger');
    await expect
      .poll(async () => Object.keys(await coloursOf(windows.last().locator('canvas'))).length)
      .toBeGreaterThan(10);
    await page.screenshot({ path: join(pictures, 'heart-throat.png') });
    await choose('Closer: lip');
    await expect.poll(() => textOf(windows.first())).toContain('lip');
    await choose('Closer: lip');
    await expect.poll(() => windows.count()).toBe(0);
  });
});

describe('the altitude scale', () => {
  it('follows drag, keys, wheel and click, and climbs in steps where motion is to be reduced', async () => {
    await open();
    // The finest steps of altitude come last.
    await answered();
    const now = async () => Number(await slider().getAttribute('aria-valuenow'));
    const before = { numbers: await ledgerNumbers(), drawing: await page.locator('.stage').innerHTML() };
    await expect.poll(() => slider().getAttribute('aria-valuetext')).toBe('0 kilometres, 1.01 bar');
    const box = await slider().boundingBox();
    if (box === null) throw new Error('the slider is not visible');
    const x = box.x + box.width / 2;
    await page.mouse.move(x, box.y + box.height - 2);
    await page.mouse.down();
    for (let i = 1; i <= 10; i++) await page.mouse.move(x, box.y + box.height * (1 - 0.03 * i));
    await page.mouse.up();
    await expect.poll(() => now()).toBeGreaterThan(8);
    expect(await now()).toBeLessThan(16);
    await expect.poll(() => ledgerNumbers()).not.toEqual(before.numbers);
    await expect.poll(() => page.locator('.stage').innerHTML()).not.toBe(before.drawing);

    await slider().focus();
    await page.keyboard.press('Home');
    await expect.poll(() => now()).toBe(0);
    await page.keyboard.press('ArrowUp');
    await expect.poll(() => now()).toBe(0.5);
    await page.keyboard.press('PageUp');
    await expect.poll(() => now()).toBe(5.5);
    await page.keyboard.press('PageDown');
    await expect.poll(() => now()).toBe(0.5);
    await page.keyboard.press('ArrowDown');
    await expect.poll(() => now()).toBe(0);
    await page.keyboard.press('End');
    await expect.poll(() => slider().getAttribute('aria-valuetext')).toBe('vacuum, no air');
    await page.keyboard.press('Home');
    await expect.poll(() => now()).toBe(0);
    for (let i = 0; i < 24; i++) await page.keyboard.press('ArrowUp');
    // U.S. Standard Atmosphere 1976, table I: 12 000 m geometric, 1.9399e4 Pa
    await expect.poll(() => slider().getAttribute('aria-valuetext')).toBe('12 kilometres, 0.19 bar');

    await page.mouse.click(x, box.y + box.height / 2);
    await expect.poll(() => now()).toBeGreaterThan(15);
    const middle = await now();
    expect(middle).toBeLessThan(26);
    await page.mouse.wheel(0, -100);
    await expect.poll(() => now()).toBeCloseTo(middle + 0.5, 6);

    await slider().focus();
    await page.keyboard.press('Home');
    await expect.poll(() => now()).toBe(0);
    const seen = await textsSeen('.readout.altitude b');
    const steps = async () => (await seen()).filter((text) => text !== '0.0 km');
    await page.getByRole('button', { name: 'Climb' }).click();
    await expect.poll(async () => (await steps()).length).toBeGreaterThanOrEqual(2);
    await page.getByRole('button', { name: 'Stop' }).click();
    expect((await steps()).slice(0, 2)).toEqual(['1.0 km', '2.0 km']);
  });
});
