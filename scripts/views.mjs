/**
 * Takes a picture of every view of the workbench, on a copy of the example, at four sizes of window, light and dark:
 * each tab, a number's card, the find box, the live answer and its overlay, a figure, parts drawn larger, a fault, 200 % zoom.
 * They are to be opened and looked at.
 *
 *   npm run views                        after a build, into tests/browser/__out__/views
 *   npm run views -- 390x844 dark live   only those whose names hold all of these words
 */
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { serveStudy } from '../dist/faces/server/serveStudy.js';
import { findOrInstallBrowser } from './browser.mjs';
import { root } from './house.mjs';

const sizes = [
  { name: '1440x900', width: 1440, height: 900 },
  { name: '1920x1080', width: 1920, height: 1080 },
  { name: '820x1180', width: 820, height: 1180 },
  { name: '390x844', width: 390, height: 844 },
  // A window of 1440 × 900 at 200 %.
  { name: '200-percent', width: 720, height: 450, deviceScaleFactor: 2 },
];
const words = process.argv.slice(2);
const wanted = (name) => words.every((word) => name.includes(word));
const patience = { timeout: 120_000 };

const out = join(root, 'tests', 'browser', '__out__', 'views');
mkdirSync(out, { recursive: true });
const shelf = mkdtempSync(join(tmpdir(), 'plumeline-views-'));
const folder = join(shelf, 'alder-booster');
cpSync(join(root, 'examples', 'alder-booster'), folder, { recursive: true });
const server = await serveStudy({ folder, port: 0 });
const browser = await chromium.launch({
  executablePath: findOrInstallBrowser(),
  args: ['--headless', '--no-sandbox', '--disable-gpu'],
});

const tab = (name) => async (page) => {
  await page.getByRole('tab', { name, exact: true }).click();
  await page.locator('aside').evaluate((aside) => aside.scrollIntoView({ block: 'start' }));
  await page.waitForTimeout(1500);
};
const press = (name) => (page) => page.getByRole('button', { name }).first().click();
const live = (hash, ready) => async (page) => {
  await page.goto(`${server.url}#live${hash}`);
  await page.locator(ready).first().waitFor(patience);
};

/** Back from a tab, a card, an altitude to the page as it opens. */
const home = async (page) => {
  for (const name of ['Pressure', 'Inputs']) {
    await page.locator(`aside button:text-is("${name}")`).first().click();
  }
  const closer = page.getByRole('button', { name: /^Closer/, pressed: true });
  if ((await closer.count()) > 0) await closer.click();
  await page.getByRole('slider', { name: 'Altitude' }).focus();
  await page.keyboard.press('Home');
  await page.evaluate(() => {
    document.activeElement?.blur();
    scrollTo(0, 0);
  });
};
const dismiss = async (page) => {
  await page.keyboard.press('Escape');
  await page.keyboard.press('Escape');
};

/** Every view, by what is done to come to it, and what to come back from it. */
const views = {
  opened: [async () => undefined],
  climbed: [
    async (page) => {
      await page.getByRole('slider', { name: 'Altitude' }).focus();
      for (let i = 0; i < 4; i++) await page.keyboard.press('PageUp');
    },
  ],
  vacuum: [
    async (page) => {
      await page.getByRole('slider', { name: 'Altitude' }).focus();
      await page.keyboard.press('End');
    },
  ],
  speed: [press('Speed')],
  'closer-throat': [press('Closer: throat')],
  card: [
    (page) => page.locator('table.ledger button.number').first().click(),
    (page) => page.locator('aside').getByRole('button', { name: 'Close' }).first().click(),
  ],
  sentences: [tab('Sentences')],
  sentence: [
    async (page) => {
      await tab('Sentences')(page);
      await page.locator('#panel button').first().click();
      await page.waitForTimeout(800);
    },
    dismiss,
  ],
  script: [tab('Script')],
  sweeps: [tab('Sweeps')],
  figures: [tab('Figures')],
  figure: [
    async (page) => {
      await tab('Figures')(page);
      await page.locator('#panel button').first().click();
      await page.locator('dialog.figure-view svg').first().waitFor(patience);
    },
    dismiss,
  ],
  vehicles: [tab('Vehicles')],
  worth: [tab('Worth')],
  models: [tab('Models')],
  find: [
    async (page) => {
      await page.keyboard.press('Control+k');
      await page.keyboard.type('exit pressure at 10 km');
      await page.locator('dialog.find [role=option]').first().waitFor(patience);
      await page.waitForTimeout(400);
    },
    dismiss,
  ],
  fault: [
    async (page) => {
      writeFileSync(study, whole.replace(/^( {6}pressure: ).*$/m, '$1many bars'));
      await page.locator('.page.outdated').waitFor(patience);
    },
    async (page) => {
      writeFileSync(study, whole);
      await page.locator('.page:not(.outdated)').waitFor(patience);
    },
  ],
  live: [live('', '.live-number b')],
  'live-number': [live('=exitPressure&of=bell&at=10km', '.live-number b')],
  'live-overlay': [live('=exitPressure&of=bell&at=10km&overlay', '.live-number b')],
};

const study = join(folder, 'study.yaml');
const whole = readFileSync(study, 'utf8');
let taken = 0;
for (const size of sizes) {
  for (const theme of ['light', 'dark']) {
    const name = (view) => `${size.name}-${theme}-${view}`;
    const shown = Object.keys(views).filter((view) => wanted(name(view)));
    if (shown.length === 0) continue;
    const context = await browser.newContext({
      viewport: { width: size.width, height: size.height },
      deviceScaleFactor: size.deviceScaleFactor ?? 1,
      colorScheme: theme,
      reducedMotion: 'reduce',
    });
    const page = await context.newPage();
    page.on('pageerror', (error) => console.log(`${size.name} ${theme}: ${error}`));
    await page.goto(server.url);
    await page.locator('aside .tabs').waitFor(patience);
    // Spans and verdicts too, where they come in time: as it looks when one has sat before it for a moment.
    await page
      .locator('.span-words')
      .first()
      .waitFor(patience)
      .catch(() => undefined);
    for (const view of shown) {
      const [come, back] = views[view];
      try {
        await come(page);
        await page.waitForTimeout(300);
        await page.screenshot({ path: join(out, `${name(view)}.png`) });
        taken += 1;
        const wider = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
        if (wider > 0) console.log(`${name(view)}: ${wider} px wider than the window`);
        await back?.(page);
        if (!view.startsWith('live')) await home(page);
      } catch (error) {
        console.log(`${name(view)}: ${String(error).split('\n').slice(0, 3).join(' ')}`);
        await page.goto('about:blank');
        await page.goto(server.url);
        await page.locator('aside .tabs').waitFor(patience);
      }
    }
    await context.close();
  }
}
await browser.close();
await server.close();
rmSync(shelf, { recursive: true });
console.log(`${taken} pictures in ${out}`);
