import { mkdtempSync, readdirSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { makeRoom } from '../../../src/faces/disk/flowRoom.ts';

test('the oldest flows make way, nothing else of the folder does', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'plumeline-room-'));
  try {
    for (const [i, name] of ['old.json', 'middle.json', 'new.json', 'other.txt'].entries()) {
      writeFileSync(join(folder, name), 'x'.repeat(100));
      utimesSync(join(folder, name), 1000 + i, 1000 + i);
    }
    expect(await makeRoom(folder, 300)).toBe(0);
    expect(await makeRoom(folder, 250)).toBe(1);
    expect(readdirSync(folder).sort()).toEqual(['middle.json', 'new.json', 'other.txt']);
    expect(await makeRoom(folder, 0)).toBe(2);
    expect(readdirSync(folder)).toEqual(['other.txt']);
    expect(await makeRoom(join(folder, 'none'), 0)).toBe(0);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});
