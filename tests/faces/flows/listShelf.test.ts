import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test, vi } from 'vitest';
import type { ListedFlow } from '../../../src/faces/flows/flowList.ts';
import { keepFlowList, readFlowList } from '../../../src/faces/flows/listShelf.ts';

test('a field whose cells made way is not listed', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'plumeline-list-'));
  try {
    const [here, gone] = ['here', 'gone'].map((key) => ({ key, engine: 'cold' }) as ListedFlow);
    for (const key of ['here', 'gone']) writeFileSync(join(folder, `${key}.json`), '{}');
    await keepFlowList(folder, 'mark', [here!, gone!]);
    expect(await readFlowList(folder, 'mark')).toEqual([here, gone]);
    rmSync(join(folder, 'gone.json'));
    expect(await readFlowList(folder, 'mark')).toEqual([here]);
    expect(await readFlowList(folder, 'other')).toEqual([]);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});

test('where no list can be kept that is said once, and the work goes on', async () => {
  const warned = vi.spyOn(process, 'emitWarning').mockImplementation(() => undefined);
  const folder = mkdtempSync(join(tmpdir(), 'plumeline-list-'));
  try {
    const file = join(folder, 'a file');
    writeFileSync(file, '');
    for (let n = 0; n < 2; n++) await keepFlowList(join(file, 'below'), 'mark', []);
    expect(warned).toHaveBeenCalledTimes(1);
    expect(String(warned.mock.calls[0]?.[0])).toMatch(/cannot be kept in .*below/);
  } finally {
    warned.mockRestore();
    rmSync(folder, { recursive: true, force: true });
  }
});
