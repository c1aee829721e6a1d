import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { placeProblem } from '../../../src/faces/cli/placeProblem.ts';
import { writeFileAtomically } from '../../../src/faces/disk/atomicWrite.ts';

const failed = (work: Promise<unknown>): Promise<unknown> =>
  work.then(
    () => null,
    (error: unknown) => error,
  );

test('a folder that is not there, or is a file, is told in words', async () => {
  const place = await mkdtemp(join(tmpdir(), 'plumeline-place-'));
  try {
    const missing = await failed(writeFileAtomically(join(place, 'no', 'x.svg'), ''));
    expect(placeProblem(missing)?.what).toMatch(/no: there is no such file or folder\.$/);
    await writeFile(join(place, 'file'), '');
    const inFile = await failed(writeFile(join(place, 'file', 'x.png'), ''));
    expect(placeProblem(inFile)?.what).toMatch(/a part of the path is a file, no folder\.$/);
  } finally {
    await rm(place, { recursive: true, force: true });
  }
});

test('a fault of the program stays one', () => {
  expect(placeProblem(new TypeError('x is not a function'))).toBeNull();
  expect(placeProblem('ENOENT')).toBeNull();
});
