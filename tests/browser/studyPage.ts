/** The workbench open in a real browser on a copy of the example study, for the tests of this folder. */

import { cp, mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { AxeResults } from 'axe-core';
import type { Browser, BrowserContext, Locator, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect } from 'vitest';
import { type RunningServer, serveStudy } from '../../src/faces/server/serveStudy.ts';
import { buildWorkbenchIfOlder } from './built.ts';
import { launchChromium } from './chromium.ts';

const example = fileURLToPath(new URL('../../examples/alder-booster', import.meta.url));
export const pictures = fileURLToPath(new URL('./__out__/', import.meta.url));
const axe = createRequire(import.meta.url).resolve('axe-core/axe.min.js');

export let browser: Browser;
/** The study’s own, alone in a folder of its own. */
export let folder: string;
let shelf: string;
export let server: RunningServer;
export let context: BrowserContext;
export let page: Page;
let complaints: string[];
let foreign: string[];

export const studyFile = () => join(folder, 'study.yaml');
export const onDisk = () => readFile(studyFile(), 'utf8');

/** For tests that need no other sentences than these: checking the others would keep both cores busy all the while. */
export async function keepSentences(...ids: readonly string[]): Promise<void> {
  const block = /^sentences:\n([\s\S]*?)(?=^# What a bell would need)/m;
  const text = await onDisk();
  const all = (block.exec(text)?.[1] ?? '').split(/^(?= {2}- id: )/m);
  const kept = ids.map((id) => all.find((one) => one.startsWith(`  - id: ${id}\n`)) ?? `no sentence ${id}\n`);
  await writeFile(studyFile(), text.replace(block, kept.length === 0 ? '' : `sentences:\n${kept.join('')}`));
}

/** For tests that are not about sentences at all. */
export const withoutSentences = (): Promise<void> => keepSentences();

interface Looks {
  readonly width?: number;
  readonly height?: number;
  readonly dark?: boolean;
  readonly still?: boolean;
}

export async function open({ width = 1440, height = 900, dark = false, still = true }: Looks = {}) {
  context = await browser.newContext({
    viewport: { width, height },
    colorScheme: dark ? 'dark' : 'light',
    reducedMotion: still ? 'reduce' : 'no-preference',
  });
  page = await context.newPage();
  complaints = [];
  foreign = [];
  page.on('console', (message) => {
    // The browser’s own note where it has no graphics processor.
    if (message.text() === 'No available adapters.') return;
    if (['error', 'warning'].includes(message.type())) complaints.push(message.text());
  });
  page.on('pageerror', (error) => complaints.push(String(error)));
  page.on('request', (request) => {
    if (!request.url().startsWith(server.url)) foreign.push(request.url());
  });
  await page.goto(server.url);
  await ready();
}

/** A busy machine may take long over the first answer. */
export const ready = () =>
  page.waitForFunction(() => document.documentElement.dataset.ready === 'true', null, { timeout: 120_000 });
export const textOf = async (place: Locator) => (await place.textContent()) ?? '';
export const slider = () => page.getByRole('slider', { name: 'Altitude' });
export const number = (name: string) => page.getByRole('button', { name: new RegExp(`^${name}`, 'i') });
export const ledgerText = () => textOf(page.locator('table.ledger'));

/** From now on, every text that the places (selectors, with commas between) show together. */
export async function textsSeen(places: string): Promise<() => Promise<readonly string[]>> {
  await page.evaluate((wanted) => {
    const seen: string[] = [];
    const here = globalThis as { seenTexts?: Record<string, string[]> };
    here.seenTexts = { ...here.seenTexts, [wanted]: seen };
    const look = () => {
      const texts = [...document.querySelectorAll(wanted)].map((one) => one.textContent);
      const text = texts.join('\n');
      if (text !== seen.at(-1)) seen.push(text);
    };
    new MutationObserver(look).observe(document.body, {
      subtree: true,
      childList: true,
      characterData: true,
    });
  }, places);
  return () =>
    page.evaluate(
      (wanted) => (globalThis as unknown as { seenTexts: Record<string, string[]> }).seenTexts[wanted] ?? [],
      places,
    );
}

/** What the accessibility checker has to say of the page as it is. */
export async function axeFindings(where: string): Promise<string[]> {
  // The page's policy allows no script but its own; the checker comes in past it, by the debugger.
  await page.evaluate(await readFile(axe, 'utf8'));
  const { violations } = await page.evaluate(() =>
    (globalThis as unknown as { axe: { run(): Promise<AxeResults> } }).axe.run(),
  );
  return violations.map(
    ({ id, nodes }) => `${where}: ${id} at ${nodes.map((node) => node.target.join(' ')).join(', ')}`,
  );
}

/** What the browser complained of so far, less what matches, as the test expects it. */
export function forgive(expected: RegExp): void {
  complaints = complaints.filter((text) => !expected.test(text));
}

/** To be called once at the top of a test file: a browser for all tests, a fresh copy and server for each. */
/** @param flags of the browser beside the usual ones */
export function useWorkbench(flags: readonly string[] = []): void {
  beforeAll(async () => {
    buildWorkbenchIfOlder();
    await mkdir(pictures, { recursive: true });
    browser = await launchChromium(flags);
  });
  afterAll(async () => {
    await browser.close();
  });
  beforeEach(async () => {
    shelf = await mkdtemp(join(tmpdir(), 'plumeline-browser-'));
    folder = join(shelf, 'alder-booster');
    await cp(example, folder, { recursive: true });
    server = await serveStudy({ folder, port: 0 });
  });
  afterEach(async () => {
    await context.close();
    await server.close();
    await rm(shelf, { recursive: true });
    expect(complaints).toEqual([]);
    expect(foreign).toEqual([]);
  });
}
