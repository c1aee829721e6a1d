/** A Chromium or Chrome of this machine, found and started without a window; none is ever downloaded. */

import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import type { Browser } from 'playwright-core';
import { type Problem, ProblemError } from '../../numerics/problem.ts';

const names = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome', 'msedge'];
const usualPlaces = [
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe',
];

/** No sandbox: it shows pages of this program alone, and asks nothing of the network. */
const flags = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** Path of a browser: the environment variable CHROME, else the first of the usual names on PATH; null: none. */
export function findChromium(): string | null {
  const named = process.env.CHROME;
  if (named !== undefined && named !== '') {
    if (existsSync(named)) return named;
    throw new ProblemError({
      code: 'browser-not-there',
      what: `The environment variable CHROME names ${named}, where there is no file.`,
      mend: 'Set CHROME to the path of Chromium or Chrome, or unset it.',
    });
  }
  const suffix = process.platform === 'win32' ? '.exe' : '';
  const folders = (process.env.PATH ?? '').split(delimiter);
  const onPath = folders.flatMap((folder) => names.map((name) => join(folder, name + suffix)));
  return [...onPath, ...usualPlaces].find((path) => existsSync(path)) ?? null;
}

const MISSING: Problem = {
  code: 'browser-missing',
  what: 'No Chromium or Chrome was found on this machine.',
  why: 'It encodes the films.',
  mend: 'Install one, or set the environment variable CHROME to its path.',
};

/** Why no film can be encoded here; null where a browser is there. */
export const launchProblem = (): Problem | null => (findChromium() === null ? MISSING : null);

/** @param more flags beside the usual ones @throws ProblemError where there is none */
export async function launchChromium(more: readonly string[] = []): Promise<Browser> {
  const executablePath = findChromium();
  if (executablePath === null) throw new ProblemError(MISSING);
  const { chromium } = await import('playwright-core');
  // An interrupt is answered by the program, which closes the browser itself.
  return chromium.launch({ executablePath, args: [...flags, ...more], headless: true, handleSIGINT: false });
}
