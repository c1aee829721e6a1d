/** The engines cut open: what the gas is tinted by, and small parts drawn larger. */

import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { axeFindings, open, page, pictures, textOf, useWorkbench } from './studyPage.ts';

useWorkbench();

const choose = (name: string) => page.getByRole('button', { name, exact: true }).click();
const cut = () => page.locator('.stage svg.cut').innerHTML();

describe('the heart', () => {
  it('is tinted by pressure, Mach number, temperature and speed, each with its key', async () => {
    await open();
    const seen = new Set([await cut()]);
    await expect.poll(() => cut()).toContain('var(--pressure-');
    for (const [name, key] of [
      ['Mach', 'Mach number'],
      ['Temperature', 'gas, K'],
      ['Speed', 'm/s'],
    ] as const) {
      await choose(name);
      const drawing = await cut();
      expect(drawing).toContain(`var(--${name.toLowerCase()}-`);
      expect(drawing).not.toContain('var(--pressure-');
      seen.add(drawing);
      await expect
        .poll(() => page.getByRole('img', { name: /^Key to the tint/ }).getAttribute('aria-label'))
        .toContain(key);
    }
    expect(seen.size).toBe(4);
    await expect.poll(() => axeFindings('tinted by speed')).toEqual([]);
    await page.screenshot({ path: join(pictures, 'heart-speed.png') });
    await choose('Pressure');
    await expect.poll(() => cut()).toContain('var(--pressure-');
  });

  it('draws throat or lip of both engines larger, and takes them away again', async () => {
    await open();
    await choose('Closer: throat');
    const windows = page.locator('.closer');
    await expect.poll(() => windows.count()).toBe(2);
    await expect.poll(() => textOf(windows.first())).toBe('throat, 5 × larger');
    await expect.poll(() => windows.last().locator('path').count()).toBeGreaterThan(10);
    await page.screenshot({ path: join(pictures, 'heart-throat.png') });
    await choose('Closer: lip');
    await expect.poll(() => textOf(windows.first())).toContain('lip');
    await choose('Closer: lip');
    await expect.poll(() => windows.count()).toBe(0);
  });
});
