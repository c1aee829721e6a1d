import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { earlierPackage } from '../../../src/faces/package/earlierPackage.ts';
import { packageForm, requireReplaceable } from '../../../src/faces/package/packagePlace.ts';

let folder: string;
const write = (name: string, text = ''): void => writeFileSync(join(folder, name), text);

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'plumeline-place-'));
  mkdirSync(join(folder, 'figures'));
  write('figures/cut.svg');
  write('manifest.json', JSON.stringify({ format: packageForm, files: { 'figures/cut.svg': {} } }));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

describe('the place of a package', () => {
  test('an earlier package may be replaced, whatever a file browser left in it', async () => {
    write('figures/.DS_Store');
    await expect(requireReplaceable(folder)).resolves.toBeUndefined();
  });

  test('a file of somebody else’s is not destroyed, in a folder of the package either', async () => {
    write('figures/mine.png');
    await expect(requireReplaceable(folder)).rejects.toThrow(/figures\/mine\.png/);
  });

  test('a manifest that is no JSON is none', async () => {
    write('manifest.json', `{ "format": "${packageForm}", `);
    await expect(requireReplaceable(folder)).rejects.toThrow(/no package of this program/);
  });

  test('corrections are kept also where the rest tells too little to be compared', async () => {
    write('corrections.md', '## 2026-11-26\n');
    expect(await earlierPackage(folder)).toEqual({ published: null, corrections: '## 2026-11-26\n' });
  });
});
