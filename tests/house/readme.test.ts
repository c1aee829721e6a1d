/** What the documents show as an example must work. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { afterAll, describe, expect, test } from 'vitest';
import { solveStudy } from '../../src/answer/solve.ts';
import { openDataShelf } from '../../src/faces/disk/data.ts';
import { knownNames } from '../../src/study/names.ts';
import { readStudy } from '../../src/study/read.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const block = (document: string, language: string): string => {
  const found = new RegExp(`\`\`\`${language}\\n([\\s\\S]*?)\`\`\``).exec(
    readFileSync(join(root, document), 'utf8'),
  );
  if (found?.[1] === undefined) throw new Error(`${document} shows no ${language}`);
  return found[1];
};
const place = mkdtempSync(join(tmpdir(), 'plumeline-readme-'));
afterAll(() => rmSync(place, { recursive: true, force: true }));

describe('examples in the documents', () => {
  test.each(['README.md', 'docs/study-file.md'])(
    'the smallest study of %s is read and solved',
    async (document) => {
      const shelf = openDataShelf();
      const outcome = readStudy(block(document, 'yaml'), {
        file: document,
        ...knownNames(await shelf.propellants()),
      });
      if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
      const answer = await solveStudy(outcome.study, shelf);
      expect(Object.keys(answer.engines)).toEqual(['short', 'long']);
      expect(answer.failed).toEqual({});
    },
  );

  test('the program that uses the physics alone runs, on the package as built', () => {
    const { exports } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
    const code = block('README.md', 'ts').replace(/'plumeline\/([a-z]+)'/g, (_, name: string) =>
      JSON.stringify(pathToFileURL(join(root, exports[`./${name}`].default)).href),
    );
    const file = join(place, 'example.mjs');
    writeFileSync(file, code);
    const printed = execFileSync(process.execPath, [file], { encoding: 'utf8' });
    const [speed = 0, exhaust = 0] = printed.trim().split(/\s+/).map(Number);
    // Ideal c* and exhaust speed of such an engine: an independent calculation gives c* 2306 m/s at 1000 psia.
    expect(speed).toBeGreaterThan(2300);
    expect(speed).toBeLessThan(2340);
    expect(exhaust).toBeGreaterThan(4300);
    expect(exhaust).toBeLessThan(4600);
  });
});
