/** Solved studies kept on disk. */

import { mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { keptAnswers } from '../../../src/faces/disk/keptAnswers.ts';

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'plumeline-kept-'));
});
afterEach(() => rm(folder, { recursive: true }));

const block = Uint8Array.from([1, 2, 3, 4, 5, 6, 7, 8]);

it('gives back what was kept of the same text by the same program, and of no other', async () => {
  const kept = keptAnswers('one', folder);
  expect(await kept.read('a text')).toBeNull();
  await kept.keep('a text', block);
  expect(await kept.read('a text')).toEqual(block);
  expect(await kept.read('another')).toBeNull();
  expect(await keptAnswers('two', folder).read('a text')).toBeNull();
  expect(await keptAnswers('one', folder).read('a text')).toEqual(block);
});

it('takes no file that is not whole', async () => {
  const kept = keptAnswers('one', folder);
  await kept.keep('a text', block);
  const [name = ''] = await readdir(folder);
  const bytes = await readFile(join(folder, name));
  await writeFile(join(folder, name), bytes.subarray(0, bytes.length - 1));
  expect(await kept.read('a text')).toBeNull();
  bytes[70] = 9;
  await writeFile(join(folder, name), bytes);
  expect(await kept.read('a text')).toBeNull();
  await writeFile(join(folder, name), '');
  expect(await kept.read('a text')).toBeNull();
});

it('keeps the last few', async () => {
  const kept = keptAnswers('one', folder);
  for (let i = 0; i < 11; i++) await kept.keep(`text ${i}`, block);
  expect((await readdir(folder)).length).toBe(8);
  expect(await kept.read('text 10')).toEqual(block);
});
