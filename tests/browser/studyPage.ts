/** The workbench open in a real browser on a copy of the example study, for the tests of this folder. */

import { cp, mkdir, mkdtemp, readFile, rm } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { AxeResults } from 'axe-core';
import type { Browser, BrowserContext, Locator, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect } from 'vitest';
import { writeFileAtomically } from '../../src/faces/disk/atomicWrite.ts';
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
let forgiven: RegExp[];
let foreign: string[];

export const studyFile = () => join(folder, 'study.yaml');
export const onDisk = () => readFile(studyFile(), 'utf8');
/** As another program would: never half of it is there. */
export const writeStudy = (text: string): Promise<void> => writeFileAtomically(studyFile(), text);

/** For tests that need no other sentences than these: checking the others would keep both cores busy all the while. */
export async function keepSentences(...ids: readonly string[]): Promise<void> {
  const block = /^sentences:\n([\s\S]*?)(?=^# What a bell would need)/m;
  const text = await onDisk();
  const all = (block.exec(text)?.[1] ?? '').split(/^(?= {2}- id: )/m);
  const kept = ids.map((id) => all.find((one) => one.startsWith(`  - id: ${id}\n`)) ?? `no sentence ${id}\n`);
  await writeStudy(text.replace(block, kept.length === 0 ? '' : `sentences:\n${kept.join('')}`));
}

/** For tests that are not about sentences at all. */
export const withoutSentences = (): Promise<void> => keepSentences();

interface Looks {
  readonly width?: number;
  readonly height?: number;
  readonly dark?: boolean;
  readonly still?: boolean;
  readonly touch?: boolean;
  /** By the page's own clock all goes so many times faster: on a busy machine keys lie further apart than under a hand. */
  readonly haste?: number;
}

export async function open(looks: Looks = {}) {
  const { width = 1440, height = 900, dark = false, still = true, touch = false, haste = 1 } = looks;
  context = await browser.newContext({
    viewport: { width, height },
    colorScheme: dark ? 'dark' : 'light',
    reducedMotion: still ? 'reduce' : 'no-preference',
    hasTouch: touch,
  });
  context.setDefaultTimeout(60_000);
  await context.addInitScript((times) => {
    const now = performance.now.bind(performance);
    performance.now = () => now() / times;
  }, haste);
  page = await context.newPage();
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

/** A busy machine may take long over an answer. */
export const patient = { timeout: 90_000 };

/** The engines are on screen; their finer steps, the short answer and what hangs on them may still follow. */
export const ready = (on: Page = page) =>
  on.waitForFunction(() => document.documentElement.dataset.ready === 'true', null, patient);
/** All of the answer is there, of the study as its file has it. */
export const answered = (on: Page = page) =>
  expect.poll(() => textOf(on.locator('header [role=status]')), patient).toBe('saved in study.yaml');
export const textOf = async (place: Locator) => (await place.textContent()) ?? '';
export const slider = () => page.getByRole('slider', { name: 'Altitude' });
export const number = (name: string) => page.getByRole('button', { name: new RegExp(`^${name}`, 'i') });
export const ledgerText = () => textOf(page.locator('table.ledger'));
/** The numbers of the engines alone: how far they may go, and so whether a difference is too close to call, comes later. */
export const ledgerNumbers = () => page.locator('table.ledger td.value .number').allTextContents();

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

/** What the browser is expected to complain of in this test; an event source that is kept away tries again until the page is closed. */
export function forgive(expected: RegExp): void {
  forgiven.push(expected);
}

/**
 * To be called once at the top of a test file: a browser for all tests; for each try of each a fresh copy and server.
 *
 * @param flags of the browser beside the usual ones
 */
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
    [complaints, forgiven, foreign] = [[], [], []];
    // A try before this one may have brought it down.
    if (!browser.isConnected()) browser = await launchChromium(flags);
    shelf = await mkdtemp(join(tmpdir(), 'plumeline-browser-'));
    folder = join(shelf, 'alder-booster');
    await cp(example, folder, { recursive: true });
    server = await serveStudy({ folder, port: 0 });
  });
  afterEach(async () => {
    // All that the test opened, also where it failed half-way.
    for (const each of browser.contexts()) await each.close();
    await server.close();
    await rm(shelf, { recursive: true });
    expect(complaints.filter((text) => !forgiven.some((expected) => expected.test(text)))).toEqual([]);
    expect(foreign).toEqual([]);
  });
}
