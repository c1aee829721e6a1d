/** A real Chromium or Chrome for the tests, found on this machine; none is ever downloaded. */

import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { type Browser, chromium } from 'playwright-core';

const names = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome', 'msedge'];
const usualPlaces = [
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe',
];

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

/** Path of a browser: the environment variable CHROME, else the first of the usual names on PATH. */
export function findChromium(): string {
  const named = process.env.CHROME;
  if (named !== undefined && named !== '') {
    if (existsSync(named)) return named;
    throw new Error(`CHROME names ${named}, where there is no file.`);
  }
  const suffix = process.platform === 'win32' ? '.exe' : '';
  const folders = (process.env.PATH ?? '').split(delimiter);
  const onPath = folders.flatMap((folder) => names.map((name) => join(folder, name + suffix)));
  const found = [...onPath, ...usualPlaces].find((path) => existsSync(path));
  if (found !== undefined) return found;
  throw new Error(
    'The browser tests need Chromium or Chrome. Install one, or set the environment variable CHROME to its path.',
  );
}

export function launchChromium(): Promise<Browser> {
  return chromium.launch({ executablePath: findChromium(), args: flags, headless: true });
}
