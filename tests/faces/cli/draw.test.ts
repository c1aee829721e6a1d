import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { runMain } from './runMain.ts';

const study = fileURLToPath(new URL('../../../starters/blank', import.meta.url));
let folder = '';
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'plumeline-draw-'));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

const draw = (...args: readonly string[]) => runMain(['draw', study, ...args]);

test('names the figures that the study has', async () => {
  const { status, out } = await draw('--list');
  expect(status).toBe(0);
  for (const name of ['specific-impulse', 'push', 'losses', 'worth'])
    expect(out).toMatch(new RegExp(`^${name} `, 'm'));
  expect(out).not.toContain('temperatures-along-wall');
});

test('draws a figure as SVG, its table as CSV and its words as text', async () => {
  for (const [file, holds] of [
    ['push.svg', '<svg '],
    ['push.csv', 'push on one surface'],
    ['push.txt', 'Push of the gas surface by surface, in vacuum.'],
  ] as const) {
    const path = join(folder, file);
    const { status } = await draw('--figure', 'push', '--altitude', 'vacuum', '--out', path);
    expect(status).toBe(0);
    const text = await readFile(path, 'utf8');
    expect(text).toContain(holds);
    expect(text).toContain('not for building');
  }
});

test('draws a PNG of the width asked for, with no ground', async () => {
  const path = join(folder, 'thrust.png');
  const { status } = await draw(
    '--figure',
    'thrust',
    '--size',
    '1:1',
    '--png',
    '333',
    '--transparent',
    '--out',
    path,
  );
  expect(status).toBe(0);
  const png = await readFile(path);
  // PNG specification, 11.2.1: width and height are the first two words of IHDR.
  expect([png.readUInt32BE(16), png.readUInt32BE(20)]).toEqual([333, 333]);
});

test('carries the fonts inside an SVG where asked', async () => {
  const path = join(folder, 'fonts.svg');
  await draw('--figure', 'outlines', '--fonts', '--theme', 'dark', '--out', path);
  expect(await readFile(path, 'utf8')).toContain('@font-face');
});

test.each([
  [['--figure', 'pushes', '--out', 'x.svg'], 'Did you mean push'],
  [['--figure', 'push'], 'No file is named'],
  [['--out', 'x.svg'], 'No figure is named'],
  [['--figure', 'push', '--out', 'x.gif'], 'does not end in'],
  [['--figure', 'push', '--out', 'x.svg', '--size', 'big'], 'is no size'],
  [['--figure', 'push', '--out', 'x.svg', '--png', '800'], 'no PNG'],
  [['--figure', 'push', '--out', 'x.svg', '--without', 'caution'], 'the caution stays'],
  [['--figure', 'push', '--out', 'x.svg', '--altitude', '1 km, 2 km'], 'one altitude'],
])('%s is told what to mend', async (args, words) => {
  const { status, err } = await draw(...args);
  expect(status).toBe(2);
  expect(err.replace(/\s+/g, ' ')).toContain(words);
});

test('names the clips that the study has, as a script calls them, and says what is missing', async () => {
  const list = await runMain(['clip', study, '--list']);
  expect(list.status).toBe(0);
  expect(list.out).toMatch(/^cut-climb +Engines cut open, climbing$/m);
  const bare = await runMain(['clip', study]);
  expect(bare.status).toBe(2);
  expect(bare.err).toMatch(/No figure is named.\s+Give --figure <name>, or --list/);
  const nowhere = await runMain(['clip', study, '--figure', 'cut-climb']);
  expect(nowhere.err).toMatch(/No file is named.\s+Give --out <file>/);
});
