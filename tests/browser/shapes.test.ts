/** Studies of other shapes, and a study that opens piece by piece. */

import { beforeEach, describe, expect, it } from 'vitest';
import {
  answered,
  axeFindings,
  context,
  onDisk,
  open,
  page,
  server,
  textOf,
  useWorkbench,
  withoutSentences,
  writeStudy,
} from './studyPage.ts';

useWorkbench();

describe('studies of other shapes', () => {
  beforeEach(withoutSentences);
  const wide = `  wide:
    like: bell
    name: Alder W
    nozzle: { kind: bell, areaRatio: 60, length: 80 % }
`;
  const withFourth = (text: string) => text.replace(/^vehicles:/m, `${wide}\nvehicles:`);
  const rewrite = async (change: (text: string) => string) => {
    const changed = change(await onDisk());
    await writeStudy(changed);
  };
  const names = () => page.locator('.engine-name b').allTextContents();

  it('shows one engine alone', async () => {
    await rewrite((text) =>
      text
        .replace(/^ {2}# The same chamber[\s\S]*?areaRatio: 60 \}\n/m, '')
        .replace(/^compare:.*\n/m, '')
        .replace(/^needs:[\s\S]*?(?=^sources:)/m, ''),
    );
    await open();
    await expect.poll(() => names()).toEqual(['Alder B']);
    await expect.poll(() => textOf(page.locator('table.ledger'))).not.toContain('Alder P');
  });

  it('lets two of four be chosen, each keeping its own style', async () => {
    await rewrite(withFourth);
    await open();
    await expect.poll(() => names()).toEqual(['Alder B', 'Alder P']);
    await page.getByLabel('Second engine').selectOption('wide');
    await expect.poll(() => names()).toEqual(['Alder B', 'Alder W']);
    await expect.poll(() => page.locator('.engine-name b').last().getAttribute('class')).toBe('text-4');
    // choosing the engine of the other side swaps the two
    await page.getByLabel('First engine').selectOption('wide');
    await expect.poll(() => names()).toEqual(['Alder W', 'Alder B']);
    await expect.poll(() => page.locator('.engine-name b').first().getAttribute('class')).toBe('text-4');
  });

  it('greys an engine that cannot be computed, says why at its cause, and recovers', async () => {
    await rewrite((text) => withFourth(text).replace('other: plug', 'other: wide'));
    await open();
    const field = page.locator('input[id="field-engines.wide.nozzle.areaRatio"]');
    await field.fill('1000');
    await field.press('Enter');
    await page.locator('.layers.failed-4').waitFor({ state: 'attached' });
    await expect.poll(() => field.getAttribute('aria-invalid')).toBe('true');
    await expect.poll(() => textOf(page.locator('.fault-line'))).toContain('Alder W');
    await expect.poll(() => textOf(page.locator('table.ledger'))).toContain('failed');
    await expect.poll(() => onDisk()).toContain('1000');
    await expect.poll(() => axeFindings('failed engine')).toEqual([]);
    await page.keyboard.press('Control+z');
    await page.locator('.layers.failed-4').waitFor({ state: 'detached' });
    await expect.poll(() => page.locator('.fault-line').count()).toBe(0);
  });

  it('tells of an engine that failed while two others are compared', async () => {
    await rewrite((text) =>
      withFourth(text).replace('areaRatio: 60, length: 80 % }\n', 'areaRatio: 1000 }\n'),
    );
    await open();
    await expect.poll(() => names()).toEqual(['Alder B', 'Alder P']);
    await expect
      .poll(() => textOf(page.locator('.stage-place .fault')))
      .toMatch(/^Alder W, not shown here, cannot be computed\. /);
  });

  it('shows published figures beside the computed ones', async () => {
    await rewrite((text) =>
      text.replace(
        /^( {4}nozzle: \{ kind: bell.*\n)/m,
        '$1    published:\n      - { quantity: thrust, value: 800 kN, at: vacuum, source: an invented leaflet }\n      - { quantity: chamberPressure, value: 90 bar, source: an invented leaflet }\n',
      ),
    );
    await open();
    await page.getByRole('button', { name: 'Alder B, published figures: 1 of 2 met' }).click();
    const shown = () => textOf(page.getByRole('tabpanel'));
    await expect.poll(shown).toContain('thrust in vacuum');
    await expect
      .poll(shown)
      .toMatch(/90 bar published, 100\.0 bar computed\+10 bar, \+11 %, outside its digits/);
    await expect.poll(() => axeFindings('published figures')).toEqual([]);
  });

  it('says what is wrong with a study that is broken from the start, and opens once it is mended', async () => {
    const good = await onDisk();
    await writeStudy(good.replace('areaRatio: 25', 'areaRatio: lots'));
    await open();
    await expect.poll(() => textOf(page.locator('.faults'))).toMatch(/line \d+, column \d+.*lots/);
    await expect.poll(() => axeFindings('broken study')).toEqual([]);
    await writeStudy(good);
    await page.locator('table.ledger').waitFor();
    await expect.poll(() => page.locator('.faults').count()).toBe(0);
  });
});

describe('a study that is opened', () => {
  it('shows what it is, then one engine after the other, and says what still follows', async () => {
    await withoutSentences();
    await open();
    const fresh = await context.newPage();
    await fresh.addInitScript(() => {
      const seen: string[] = [];
      Object.assign(globalThis, { seenStates: seen });
      const text = (place: string) =>
        [...document.querySelectorAll(place)].map((one) => one.textContent ?? '').join(' | ');
      const look = () => {
        const cells = text('table.ledger tbody tr:first-child td.value');
        const state = [text('header [role=status]'), text('.answer'), cells, text('.engine-name')].join('\n');
        if (seen.at(-1) !== state) seen.push(state);
      };
      new MutationObserver(look).observe(document, { subtree: true, childList: true, characterData: true });
    });
    await fresh.goto(server.url);
    await answered(fresh);
    const seen = await fresh.evaluate(() => (globalThis as unknown as { seenStates: string[] }).seenStates);
    const at = (what: RegExp): number => seen.findIndex((state) => what.test(state));
    const order = [
      at(/^opening the study …/),
      at(/Alder B and Alder P are being worked out; the short answer follows …\nfollows … \| follows …/),
      at(/Alder P is being worked out; .*\n\d+\.\d s.* \| follows …\n.*bell of .*being worked out …$/),
      at(/^working it out …\nThe short answer follows …\n\d+\.\d s.* \| \d+\.\d s/),
      at(/^jets and finer steps of altitude follow …\nThe lead changes/),
      at(/^saved in study\.yaml\nThe lead changes/),
    ];
    expect(order).not.toContain(-1);
    expect(order).toEqual([...order].sort((a, b) => a - b));
  });
});
