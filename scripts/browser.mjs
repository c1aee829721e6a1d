/** Find a Chromium or Chrome for the tests; on Debian as root, install the distribution's package. */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { say } from './house.mjs';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome'];
const PLACES = {
  darwin: [
    '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
    '/Applications/Chromium.app/Contents/MacOS/Chromium',
  ],
  win32: [
    'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
    'C:\\Program Files (x86)\\Google\\Chrome\\Application\\chrome.exe',
    'C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe',
  ],
};

/** Path of an installed browser, or null. The environment variable CHROME wins. */
export function findBrowser() {
  if (process.env.CHROME) return existsSync(process.env.CHROME) ? process.env.CHROME : null;
  const folders = (process.env.PATH ?? '').split(delimiter);
  const suffix = process.platform === 'win32' ? '.exe' : '';
  const onPath = NAMES.flatMap((name) => folders.map((folder) => join(folder, name + suffix)));
  return [...onPath, ...(PLACES[process.platform] ?? [])].find((path) => existsSync(path)) ?? null;
}

export function findOrInstallBrowser() {
  const found = findBrowser();
  if (found) return found;
  const mayInstall = process.getuid?.() === 0 && existsSync('/usr/bin/apt-get');
  if (!mayInstall) return null;
  say('no Chromium here: installing the Debian package (about a minute) …');
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  for (const args of [
    ['update', '-qq'],
    ['install', '-y', '-qq', '--no-install-recommends', 'chromium'],
  ]) {
    const { status } = spawnSync('apt-get', args, { stdio: ['ignore', 'ignore', 'inherit'], env });
    if (status !== 0) return null;
  }
  return findBrowser();
}
