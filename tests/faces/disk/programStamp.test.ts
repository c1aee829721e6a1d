/** A program is known by its files. */

import { mkdir, mkdtemp, rm, utimes, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { programStamp, stampOf } from '../../../src/faces/disk/programStamp.ts';

let folder: string;
const root = (): string => join(folder, 'dist/');

async function put(path: string, text: string): Promise<void> {
  const file = join(folder, path);
  await mkdir(dirname(file), { recursive: true });
  await writeFile(file, text);
  await utimes(file, 1000, 1000);
}

beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'plumeline-stamp-'));
  await put('package.json', '{"version":"1.0.0"}');
  await put('data/gas.json', '[1]');
  const parts = ['numerics', 'physics', 'study', 'answer', 'faces/solved', 'faces/disk', 'faces/flows'];
  for (const part of parts) await put(`dist/${part}/one.js`, 'a');
});
afterEach(() => rm(folder, { recursive: true }));

it.each([
  ['a longer file', 'dist/physics/one.js', 'ab'],
  ['a new file', 'dist/answer/two.js', ''],
  ['a row of data', 'data/gas.json', '[12]'],
  ['another version, all else alike', 'package.json', '{"version":"1.0.1"}'],
])('%s makes another program of it', async (_what, path, text) => {
  const before = stampOf(root());
  expect(stampOf(root())).toBe(before);
  await put(path, text);
  expect(stampOf(root())).not.toBe(before);
});

it('so does a file written later', async () => {
  const before = stampOf(root());
  await utimes(join(folder, 'dist/study/one.js'), 1000, 2000);
  expect(stampOf(root())).not.toBe(before);
});

it('what is neither run nor read does not', async () => {
  const before = stampOf(root());
  await put('dist/physics/one.d.ts', 'declare const a: number;');
  await put('dist/physics/notes.md', 'notes');
  expect(stampOf(root())).toBe(before);
});

it('the program that runs has one', () => {
  expect(programStamp()).toMatch(/^[0-9a-f]{64}$/);
});
