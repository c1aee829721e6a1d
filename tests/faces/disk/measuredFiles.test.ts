import { mkdir, mkdtemp, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { readMeasuredFiles } from '../../../src/faces/disk/measuredFiles.ts';
import type { Study } from '../../../src/study/model.ts';

const CSV = 'altitude [km], thrust [kN]\n0, 688\n';
const study = {
  measured: [
    { id: 'run', title: null, file: 'run.csv', of: 'bell', source: 'report', at: null, path: 'measured.0' },
  ],
} as unknown as Study;

let place: string;
beforeEach(async () => {
  place = await mkdtemp(join(tmpdir(), 'plumeline-measured-'));
  await mkdir(join(place, 'study'));
});
afterEach(() => rm(place, { recursive: true, force: true }));

test('a file beside the study is read', async () => {
  await writeFile(join(place, 'study', 'run.csv'), CSV);
  const { sets, problems } = await readMeasuredFiles(join(place, 'study'), study);
  expect(problems).toEqual([]);
  expect(sets[0]!.table.columns[0]!.values).toEqual([688_000]);
});

test('a link that leads out of the folder is not followed', async () => {
  await writeFile(join(place, 'elsewhere.csv'), CSV);
  await symlink(join(place, 'elsewhere.csv'), join(place, 'study', 'run.csv'));
  const { sets, problems } = await readMeasuredFiles(join(place, 'study'), study);
  expect(sets).toEqual([]);
  expect(problems[0]!.what).toMatch(/link that leads out/);
});
