import { chmodSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { readStudyFolder, studyPath } from '../../../src/faces/disk/studyFolder.ts';
import { ProblemError } from '../../../src/numerics/problem.ts';
import { goodStudy } from '../../study/badStudies.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'plumeline study é '));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const put = (content: string | Uint8Array, name = 'study.yaml'): string => {
  writeFileSync(join(folder, name), content);
  return join(folder, name);
};
const told = async (given: string): Promise<string[]> => {
  const { outcome } = await readStudyFolder(given);
  return outcome.ok ? [] : outcome.problems.map((p) => `${p.code} ${p.place?.line}:${p.place?.column}`);
};

describe('where a study lies', () => {
  test('a folder, the file in it, and either from the working folder', async () => {
    const file = put(goodStudy);
    for (const given of [
      folder,
      `${folder}/`,
      file,
      relative(process.cwd(), folder),
      relative(process.cwd(), file),
    ]) {
      const found = await studyPath(given);
      expect(found.ok && found.value).toMatchObject({ folder, file });
    }
    const other = put(goodStudy, 'another.yml');
    expect(await studyPath(other)).toMatchObject({ ok: true, value: { folder, file: other } });
  });

  test('what is not there, is no study, or cannot be a name', async () => {
    mkdirSync(join(folder, 'empty'));
    mkdirSync(join(folder, 'odd', 'study.yaml'), { recursive: true });
    put('x', 'notes.txt');
    const bad = ['', ' ', 'a\0b', join(folder, 'gone'), join(folder, 'empty'), join(folder, 'odd')];
    for (const given of [
      ...bad,
      join(folder, 'notes.txt'),
      join(folder, 'notes.txt', 'in'),
      'x'.repeat(5000),
    ]) {
      const found = await studyPath(given);
      expect(found.ok ? given : found.problem.code).toBe('study-not-found');
      await expect(readStudyFolder(given)).rejects.toThrow(ProblemError);
    }
  });

  test.skipIf(process.platform === 'win32')('a link that leads in a circle is not there', async () => {
    symlinkSync('study.yaml', join(folder, 'study.yaml'));
    expect(await studyPath(folder)).toMatchObject({ ok: false, problem: { code: 'study-not-found' } });
  });
});

describe('reading it', () => {
  test('gives text and study, or problems that name the file as it was given', async () => {
    put(goodStudy);
    const good = await readStudyFolder(folder);
    expect(good.text).toBe(goodStudy);
    expect(good.outcome.ok).toBe(true);
    const file = put(goodStudy.replace('100 bar', '100 barr'));
    const bad = await readStudyFolder(file);
    expect(bad.outcome.ok ? null : bad.outcome.problems[0]!.file).toBe(file);
    expect(await told(folder)).toEqual(['unit-unknown 8:26']);
  });

  test('text that is not UTF-8 is refused at its first bad byte', async () => {
    const bytes = new TextEncoder().encode(
      'plumeline: 1\n# a\ufffd sign for bad bytes, itself good\nquestion: é?\n',
    );
    const at = bytes.indexOf(0x3f);
    bytes[at] = 0xe9;
    put(bytes);
    expect(await told(folder)).toEqual(['not-utf8 3:12']);
    put(new Uint8Array([0xff, 0xfe, 0x70, 0x00]));
    expect(await told(folder)).toEqual(['not-utf8 1:1']);
    // Cut off in the middle of a sign.
    put(new TextEncoder().encode('plumeline: 1\nquestion: é').slice(0, -1));
    expect(await told(folder)).toEqual(['not-utf8 2:11']);
  });

  test('a file that is too large is not read at all', async () => {
    put(`# ${'x'.repeat(1_000_000)}\n`);
    const { outcome, text } = await readStudyFolder(folder);
    expect(text).toBe(null);
    expect(outcome.ok ? '' : outcome.problems[0]!.code).toBe('file-too-large');
  });

  test.skipIf(process.platform === 'win32' || process.getuid?.() === 0)(
    'a file that may not be read',
    async () => {
      chmodSync(put(goodStudy), 0);
      await expect(readStudyFolder(folder)).rejects.toMatchObject({
        problem: { code: 'study-not-readable' },
      });
    },
  );
});
