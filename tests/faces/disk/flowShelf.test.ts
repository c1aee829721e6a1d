/** Computed flows on disk. */

import { mkdtemp, readdir, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import type { FlowField } from '../../../src/answer/flow/index.ts';
import { flowKey, keepFlow, readFlow } from '../../../src/faces/disk/flowShelf.ts';

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'plumeline-flows-'));
});
afterEach(async () => {
  vi.restoreAllMocks();
  await rm(folder, { recursive: true });
});

const field = { name: 'Alder', cells: Float32Array.of(1, 2.5) } as unknown as FlowField;

it('gives back what was kept, and nothing of half a file', async () => {
  const key = flowKey(['one']);
  expect(await readFlow(folder, key)).toBeNull();
  await keepFlow(folder, key, field);
  expect(await readFlow(folder, key)).toEqual(field);
  await writeFile(join(folder, `${key}.json`), '{"format":');
  expect(await readFlow(folder, key)).toBeNull();
  expect(flowKey(['two'])).not.toBe(key);
});

it('says once where nothing can be kept, and goes on', async () => {
  const warned = vi.spyOn(process, 'emitWarning').mockImplementation(() => undefined);
  const file = join(folder, 'a file');
  await writeFile(file, '');
  await keepFlow(join(file, 'below'), 'a', field);
  await keepFlow(join(file, 'below'), 'b', field);
  expect(warned).toHaveBeenCalledTimes(1);
  expect(String(warned.mock.calls[0]?.[0])).toMatch(/cannot be kept in .*below.*XDG_CACHE_HOME/);
  expect(await readdir(folder)).toEqual(['a file']);
});
